import { outside, valid, type Checked } from '../checked.ts';

export interface Repeated {
  /** What was believed before, and how many readings that is worth. */
  sd: number;
  worth: number;
  /** The sum of squares of what was repeated, and how many times. */
  squares: number;
  count: number;
}

/**
 * How far repeated readings of one thing scatter: from what was believed before, and from those that were repeated.
 * @formula s² = (ν₀s₀² + Σd²)/(ν₀ + n)
 * @param sd s₀, any unit · @param worth ν₀, readings · @param squares Σd², that unit squared · @param count n
 * @returns s, same unit, never rounded
 * @range s₀ 10⁻⁹ to 10⁹, ν₀ 4 to 10⁶, Σd² 0 to 10⁹, n 0 to 10⁹; outside is refused
 * @source scaled inverse χ², Gelman et al. 2013, Bayesian Data Analysis, 2.6 (from memory)
 * @example repeatability({ sd: 0.05, worth: 6, squares: 0.01, count: 4 }) //=> { ok: true, value: 0.05 }
 */
export const repeatability = ({ sd, worth, squares, count }: Repeated): Checked<number> =>
  outside('standard deviation', sd, 1e-9, 1e9) ??
  outside('readings before', worth, 4, 1e6) ??
  outside('squares', squares, 0, 1e9) ??
  outside('readings', count, 0, 1e9) ??
  valid(Math.sqrt((worth * sd * sd + squares) / (worth + count)));

/**
 * What one more reading adds to the squares of those before it.
 * @formula d² = (y − mean of k)²·k/(k + 1): as spread as one reading
 * @param mean of the readings before · @param count k, 1 or more · @param value y
 * @returns d², the unit squared, never rounded
 * @range any
 * @source Welford 1962, Technometrics 4, 419 (from memory)
 * @example addedSquare({ mean: 10, count: 1 }, 12) //=> 2
 */
export const addedSquare = ({ mean, count }: { mean: number; count: number }, value: number): number =>
  ((value - mean) ** 2 * count) / (count + 1);
