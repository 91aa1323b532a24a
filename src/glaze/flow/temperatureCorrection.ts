import { firstOutside, valid, type Checked } from '../checked.ts';
import { celsius, kinematicViscosity, type Celsius, type KinematicViscosity } from '../units.ts';
import { kinematicWaterViscosity } from '../water/waterViscosity.ts';

/**
 * A cup's viscosity brought to 20 °C, as if the glaze thinned with warmth just as its water does.
 * @formula ν20 = ν·νw(20 °C)/νw(t)
 * @param viscosity ν at t, mm²/s; never seconds, never a gel · @param temperature t of the glaze, °C
 * @returns kinematic viscosity at 20 °C, mm²/s, never rounded
 * @range 15 to 25 °C, ν above 0 up to 10 000 mm²/s; outside is refused
 * @source derived: a suspension's viscosity goes as its liquid's at one φ (Krieger & Dougherty 1959, from memory)
 * @example viscosityAt20({ viscosity: kinematicViscosity(100), temperature: celsius(25) }) //=> { ok: true, value: 112.4 }
 */
export const viscosityAt20 = ({
  viscosity,
  temperature,
}: {
  viscosity: KinematicViscosity;
  temperature: Celsius;
}): Checked<KinematicViscosity> => {
  const outside = firstOutside(
    ['glaze temperature', temperature, 15, 25],
    ['kinematic viscosity', viscosity, Number.MIN_VALUE, 10_000],
  );
  if (outside) return outside;
  const then = kinematicWaterViscosity(temperature);
  if (!then.ok) return then;
  const at20 = kinematicWaterViscosity(celsius(20));
  return at20.ok ? valid(kinematicViscosity((viscosity * at20.value) / then.value)) : at20;
};
