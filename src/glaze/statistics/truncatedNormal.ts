import { outside, valid, type Checked } from '../checked.ts';
import { normalCdf, normalDensity } from './normal.ts';

/** z·φ(z), which goes to nothing at either end. */
const moment = (z: number, density: number) => (Number.isFinite(z) ? z * density : 0);

/**
 * What is left of a standard normal value that is known to lie between two marks: what a glance tells.
 * @formula Z = Φ(b) − Φ(a), mean = (φ(a) − φ(b))/Z, variance = 1 + (aφ(a) − bφ(b))/Z − mean²
 * @param low a, deviations from the mean; −∞ for none · @param high b; ∞ for none
 * @returns the chance of lying there, and mean and variance of what does, never rounded
 * @range a up to 30, b from −30, b at least 0.001 above a; outside is refused
 * @source Johnson, Kotz & Balakrishnan 1994, Continuous Univariate Distributions 1, 10.1 (from memory)
 * @example truncatedNormal({ low: 0, high: Infinity }) //=> { ok: true, value: { chance: 0.5, mean: 0.7979, variance: 0.3634 } }
 */
export const truncatedNormal = ({
  low,
  high,
}: Record<'low' | 'high', number>): Checked<Record<'chance' | 'mean' | 'variance', number>> => {
  const refusal =
    outside('lower mark', low, -Infinity, 30) ??
    outside('upper mark', high, -30, Infinity) ??
    outside('upper less lower mark', high - low, 1e-3, Infinity);
  if (refusal) return refusal;
  // Of two tails the lower is the one that keeps its digits.
  const chance = low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low);
  const atLow = normalDensity(low);
  const atHigh = normalDensity(high);
  const mean = (atLow - atHigh) / chance;
  const variance = 1 + (moment(low, atLow) - moment(high, atHigh)) / chance - mean * mean;
  return valid({ chance, mean, variance: Math.min(1, Math.max(0, variance)) });
};
