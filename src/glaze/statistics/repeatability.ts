import { firstOutside, valid, type Checked } from '../checked.ts';
import { coverage95 } from './normal.ts';

/** Quantile of chi-square. Wilson & Hilferty 1931, Proc. Natl. Acad. Sci. 17, 684 (from memory): within 3 % from four degrees on. */
const chiSquare = (z: number, degrees: number): number => {
  const part = 2 / (9 * degrees);
  return degrees * (1 - part + z * Math.sqrt(part)) ** 3;
};

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
 * @formula s² = (ν₀s₀² + Σd²)/ν, ν = ν₀ + n; 95 % interval of s: √(νs²/χ²(0.975; ν)) to √(νs²/χ²(0.025; ν))
 * @param sd s₀, any unit · @param worth ν₀, readings · @param squares Σd², that unit squared · @param count n
 * @returns s and its 95 % interval, same unit, never rounded
 * @range s₀ 10⁻⁹ to 10⁹, ν₀ 4 to 10⁶, Σd² 0 to 10⁹, n 0 to 10⁹; outside is refused
 * @source scaled inverse χ², Gelman et al. 2013, Bayesian Data Analysis, 2.6 (from memory)
 * @example repeatability({ sd: 0.05, worth: 6, squares: 0.01, count: 4 }) //=> { ok: true, value: { sd: 0.05, low: 0.034937, high: 0.0881 } }
 */
export const repeatability = ({
  sd,
  worth,
  squares,
  count,
}: Repeated): Checked<Record<'sd' | 'low' | 'high', number>> => {
  const outside = firstOutside(
    ['standard deviation', sd, 1e-9, 1e9],
    ['readings before', worth, 4, 1e6],
    ['squares', squares, 0, 1e9],
    ['readings', count, 0, 1e9],
  );
  if (outside) return outside;
  const degrees = worth + count;
  const sum = worth * sd * sd + squares;
  return valid({
    sd: Math.sqrt(sum / degrees),
    low: Math.sqrt(sum / chiSquare(coverage95, degrees)),
    high: Math.sqrt(sum / chiSquare(-coverage95, degrees)),
  });
};

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
