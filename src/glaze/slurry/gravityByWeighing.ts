import { firstOutside, valid, type Checked } from '../checked.ts';
import { gravity, millilitres, type Celsius, type Grams, type Gravity, type Millilitres } from '../units.ts';
import { waterDensity } from '../water/waterDensity.ts';

/** The gravities that a weighing may give: from froth to the heaviest slurry that still pours. */
export const weighableGravity = { low: 0.9, high: 3 } as const;

/**
 * Gravity of the bucket from one weighing of a vessel that was calibrated by weight.
 * @formula γ = (gross − tare)/M: M water that fills the same vessel at the same temperature
 * @param gross vessel and slurry, g · @param tare empty vessel, g · @param water M, g
 * @returns slurry gravity, never rounded; whether it is plausible for a glaze is not judged here
 * @range gross 0 to 10⁶ g, tare 0 to gross, water 1 to 100 000 g, gravity 0.9 to 3; outside is refused
 * @source definition of relative density
 * @example gravityByWeighing({ gross: grams(323), tare: grams(118), water: grams(100) }) //=> { ok: true, value: 2.05 }
 */
export const gravityByWeighing = ({
  gross,
  tare,
  water,
}: Record<'gross' | 'tare' | 'water', Grams>): Checked<Gravity> => {
  const value = (gross - tare) / water;
  return (
    firstOutside(
      ['water', water, 1, 1e5],
      ['gross weight', gross, 0, 1e6],
      ['tare', tare, 0, gross],
      ['gravity', value, weighableGravity.low, weighableGravity.high],
    ) ?? valid(gravity(value))
  );
};

/**
 * How much a vessel holds, from the water that fills it.
 * @formula V = M/ρw(t)
 * @param water water that fills the vessel, g · @param temperature of that water, °C
 * @returns volume, ml, never rounded
 * @range water 0 to 100 000 g, 0 to 40 °C; outside is refused
 * @source ISO 4787, gravimetric calibration (from memory), without the air buoyancy term
 * @example vesselVolume({ water: grams(998.2067), temperature: celsius(20) }) //=> { ok: true, value: 1000 }
 */
export const vesselVolume = ({
  water,
  temperature,
}: {
  water: Grams;
  temperature: Celsius;
}): Checked<Millilitres> => {
  const outside = firstOutside(['water', water, 0, 1e5]);
  if (outside) return outside;
  const density = waterDensity(temperature);
  return density.ok ? valid(millilitres((1000 * water) / density.value)) : density;
};
