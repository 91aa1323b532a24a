import { firstOutside, valid, type Checked } from '../checked.ts';
import { millipascalSeconds, seconds, type Density, type MillipascalSeconds, type Seconds } from '../units.ts';

/**
 * What clean water takes through a funnel that is not worn or clogged, at 21 ± 3 °C.
 * API RP 13B-1 (from memory for the quart); Wikipedia, Marsh funnel, for the litre.
 */
export const marshWater = {
  quart: { efflux: seconds(26), halfWidth: seconds(0.5) },
  litre: { efflux: seconds(28), halfWidth: seconds(0.5) },
} as const;

/**
 * Effective viscosity from the seconds that a quart takes through a Marsh funnel.
 * @formula μ = ρ(t − 25): ρ in g/cm³
 * @param efflux t, seconds for one US quart · @param slurryDensity ρ, kg/m³
 * @returns effective viscosity, mPa·s, never rounded
 * @range 26 s (water) to 200 s, 900 to 3000 kg/m³; outside is refused
 * @source Pitt, The Marsh Funnel and Drilling Fluid Viscosity, SPE Drilling & Completion 15 (2000) 3
 * @example marshViscosity({ efflux: seconds(40), slurryDensity: density(1100) }) //=> { ok: true, value: 16.5 }
 */
export const marshViscosity = ({
  efflux,
  slurryDensity,
}: {
  efflux: Seconds;
  slurryDensity: Density;
}): Checked<MillipascalSeconds> =>
  firstOutside(['efflux time', efflux, 26, 200], ['slurry density', slurryDensity, 900, 3000]) ??
  valid(millipascalSeconds((slurryDensity / 1000) * (efflux - 25)));
