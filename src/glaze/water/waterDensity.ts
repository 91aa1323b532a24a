import { firstOutside, valid, type Checked } from '../checked.ts';
import { density, type Celsius, type Density } from '../units.ts';

/**
 * What a litre of clean water weighs at a temperature.
 * @formula ρ = a5·[1 − (t + a1)²(t + a2)/(a3(t + a4))]
 * @param t temperature, °C
 * @returns density of air-free water at 101.325 kPa, kg/m³, never rounded
 * @range 0 to 40 °C; outside is refused
 * @source Tanaka, Girard, Davis, Peuto & Bignell, Metrologia 38 (2001) 301, eq. 1
 * @example waterDensity(celsius(20)) //=> { ok: true, value: 998.2067 }
 */
export const waterDensity = (t: Celsius): Checked<Density> =>
  firstOutside(['water temperature', t, 0, 40]) ??
  valid(density(999.97495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)))));
