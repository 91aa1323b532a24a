import { firstOutside, refused, valid, type Checked } from '../checked.ts';
import { vapourPressureDeficit, type Air } from './psychrometrics.ts';
import { gramsPerSquareMetreHour, type GramsPerSquareMetreHour } from '../units.ts';

/** J/(kg·K) of water vapour: the gas constant over the molar mass of water. */
const vapourConstant = 461.523;
/** kJ/kg at about 20 °C. Steam tables (from memory). */
const latentHeat20 = 2454;

/**
 * How many times faster a coat dries in one room than in another, with the same air movement.
 * @formula rate1/rate2 = VPD1/VPD2: Dalton's law
 * @param first, second temperature, °C, and relative humidity, 0 to 1, of each room
 * @returns ratio of drying rates, never rounded; while the surface is still wet
 * @range as vapourPressureDeficit, and the second room not saturated; outside is refused
 * @source Dalton 1802; Keddie & Routh, Fundamentals of Latex Film Formation, ch. 3
 * @example dryingRatio({ first: { temperature: celsius(25), humidity: fraction(0.5) }, second: { temperature: celsius(10), humidity: fraction(0.5) } }) //=> { ok: true, value: 2.581 }
 */
export const dryingRatio = ({ first, second }: Record<'first' | 'second', Air>): Checked<number> => {
  const one = vapourPressureDeficit(first);
  if (!one.ok) return one;
  const other = vapourPressureDeficit(second);
  if (!other.ok) return other;
  return other.value > 0
    ? valid(one.value / other.value)
    : refused('relative humidity', second.humidity, 0, 1);
};

/**
 * Water leaving a wet surface in slowly moving air.
 * @formula w = Δp(0.089 + 0.0782v)/Y: Δp vapour pressure deficit in kPa, Y latent heat in kJ/kg
 * @param air temperature, °C, and relative humidity, 0 to 1; the surface at air temperature
 * @param airSpeed v, m/s · @param latentHeat Y, 2454 kJ/kg when left out
 * @returns evaporation flux, g/(m²·h), never rounded
 * @range air as vapourPressureDeficit, v 0 to 2 m/s, Y 2300 to 2600 kJ/kg; outside is refused
 * @source ASHRAE Handbook HVAC Applications, natatoriums, after Carrier 1918 (unit system from memory)
 * @example evaporationFlux({ air: { temperature: celsius(30), humidity: fraction(0.7) }, airSpeed: 0.5 }) //=> { ok: true, value: 239.4 }
 */
export const evaporationFlux = ({
  air,
  airSpeed,
  latentHeat = latentHeat20,
}: {
  air: Air;
  airSpeed: number;
  latentHeat?: number;
}): Checked<GramsPerSquareMetreHour> => {
  const outside = firstOutside(['air speed', airSpeed, 0, 2], ['latent heat', latentHeat, 2300, 2600]);
  if (outside) return outside;
  const deficit = vapourPressureDeficit(air);
  if (!deficit.ok) return deficit;
  const perSecond = ((deficit.value / 1000) * (0.089 + 0.0782 * airSpeed)) / latentHeat;
  return valid(gramsPerSquareMetreHour(perSecond * 3.6e6));
};

/**
 * Water leaving a wet surface, from the film's own mass-transfer coefficient.
 * @formula J = h·Δp/(Rv·T)
 * @param air temperature, °C, and relative humidity, 0 to 1; the surface at air temperature
 * @param coefficient h, m/s
 * @returns evaporation flux, g/(m²·h), never rounded
 * @range air as vapourPressureDeficit, h 0 to 0.1 m/s; outside is refused
 * @source Bird, Stewart & Lightfoot, Transport Phenomena, mass-transfer coefficient with the ideal-gas law (from memory)
 * @example massTransferFlux({ air: { temperature: celsius(20), humidity: fraction(0.5) }, coefficient: 0.003 }) //=> { ok: true, value: 93.35 }
 */
export const massTransferFlux = ({
  air,
  coefficient,
}: {
  air: Air;
  coefficient: number;
}): Checked<GramsPerSquareMetreHour> => {
  const outside = firstOutside(['mass-transfer coefficient', coefficient, 0, 0.1]);
  if (outside) return outside;
  const deficit = vapourPressureDeficit(air);
  if (!deficit.ok) return deficit;
  const perSecond = (coefficient * deficit.value) / (vapourConstant * (air.temperature + 273.15));
  return valid(gramsPerSquareMetreHour(perSecond * 3.6e6));
};

/**
 * Minutes that a coat needs to lose its water while its surface stays wet.
 * @formula t = 60·m/J
 * @param water m, water in the coat, g/m² · @param flux J, g/(m²·h)
 * @returns time, min, never rounded; the last of the water takes longer than this
 * @range water 0 to 10 000 g/m², flux above 0 up to 10 000; outside is refused
 * @source derived: constant-rate period
 * @example filmMinutes({ water: 50, flux: gramsPerSquareMetreHour(166.1) }) //=> { ok: true, value: 18.06 }
 */
export const filmMinutes = ({
  water,
  flux,
}: {
  water: number;
  flux: GramsPerSquareMetreHour;
}): Checked<number> =>
  firstOutside(['water in the coat', water, 0, 10_000], ['flux', flux, 1e-6, 10_000]) ??
  valid((60 * water) / flux);
