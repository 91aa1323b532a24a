import { firstOutside, valid, type Checked } from '../checked.ts';
import {
  kinematicViscosity,
  millipascalSeconds,
  type Celsius,
  type KinematicViscosity,
  type MillipascalSeconds,
} from '../units.ts';
import { waterDensity } from './waterDensity.ts';

const terms = [
  [280.68, -1.9],
  [511.45, -7.7],
  [61.131, -19.6],
  [0.45903, -40],
] as const;

/**
 * How thick clean water is at a temperature.
 * @formula μ = Σ aᵢ(T/300 K)^bᵢ µPa·s
 * @param t temperature, °C
 * @returns dynamic viscosity at 0.1 MPa, mPa·s, never rounded
 * @range 0 to 40 °C; outside is refused
 * @source IAPWS SR6-08 (2011), after Huber et al. 2009
 * @example waterViscosity(celsius(20)) //=> { ok: true, value: 1.0016 }
 */
export const waterViscosity = (t: Celsius): Checked<MillipascalSeconds> => {
  const ratio = (t + 273.15) / 300;
  return (
    firstOutside(['water temperature', t, 0, 40]) ??
    valid(millipascalSeconds(terms.reduce((sum, [a, b]) => sum + a * ratio ** b, 0) / 1000))
  );
};

/**
 * How slowly clean water runs under its own weight at a temperature.
 * @formula ν = μ/ρ
 * @param t temperature, °C
 * @returns kinematic viscosity, mm²/s, never rounded
 * @range 0 to 40 °C; outside is refused
 * @source IAPWS SR6-08 (2011) and Tanaka et al. 2001; ISO/TR 3666 gives 1.0034 at 20 °C
 * @example kinematicWaterViscosity(celsius(20)) //=> { ok: true, value: 1.0034 }
 */
export const kinematicWaterViscosity = (t: Celsius): Checked<KinematicViscosity> => {
  const viscosity = waterViscosity(t);
  if (!viscosity.ok) return viscosity;
  const density = waterDensity(t);
  return density.ok ? valid(kinematicViscosity((1000 * viscosity.value) / density.value)) : density;
};
