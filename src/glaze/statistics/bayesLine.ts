import { firstOutside, valid, type Checked } from '../checked.ts';
import { normalCdf, normalDensity } from './normal.ts';

/** A normal belief about a line's coefficients: means and covariance. */
export interface LineBelief {
  mean: readonly number[];
  covariance: readonly (readonly number[])[];
}

/**
 * An observed point, or a censored one of which only a lower bound is known; `noise` is its standard deviation at
 * scale 1.
 */
export interface LinePoint {
  at: readonly number[];
  seen: number;
  /** Censored: the value lay above `seen`. */
  above?: true;
  noise: number;
}

/** Beliefs for several noise scales, each with its weight; the weights sum to 1. */
export type LineMixture = readonly { weight: number; belief: LineBelief }[];

const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);

/** The belief after one more point, and the likelihood of that point before it. */
const learned = (
  { mean, covariance }: LineBelief,
  { at, seen, above, noise }: LinePoint,
  scale: number,
): { belief: LineBelief; likelihood: number } => {
  const along = covariance.map((row) => dot(row, at));
  // Rounding must not make a variance negative.
  const sd = Math.sqrt(Math.max(0, dot(along, at)) + (noise * scale) ** 2);
  const z = (dot(mean, at) - seen) / sd;
  const chance = above ? normalCdf(z) : normalDensity(z) / sd;
  // A bound far above belief: the tail's own ratio, because both terms would underflow.
  const ratio = above ? (z > -30 ? normalDensity(z) / normalCdf(z) : -z - 1 / z) : -z;
  const shrink = above ? ratio * (ratio + z) : 1;
  return {
    belief: {
      mean: mean.map((value, i) => value + ((along[i] ?? 0) * ratio) / sd),
      covariance: covariance.map((row, i) =>
        row.map((value, j) => value - (shrink * (along[i] ?? 0) * (along[j] ?? 0)) / sd ** 2),
      ),
    },
    likelihood: chance,
  };
};

/** Noise scales, evenly spaced over their logarithm within ±2 deviations, and the prior weight of each. */
const deviations = [-2, -4 / 3, -2 / 3, 0, 2 / 3, 4 / 3, 2];

/**
 * Bayesian linear regression of a few readings, some of which are censored: known only to lie above a bound.
 * @formula y = θ·x + s·nᵢ·ε, θ ~ N(m, C), ln s ~ N(ln s0, d²), ε ~ N(0, 1): the normal's own update for what was seen; for
 *   a floor, the two moments of the cut-off normal; a mixture over seven scales s, weighed by how likely they make it all
 * @param prior m and C · @param points each with its x, what was seen, its noise nᵢ; floors best last
 * @param scale s0, middle of the noise's scale · @param scaleSpread d
 * @returns a mixture of normal beliefs of θ, never rounded
 * @range 1 to 1000 points, s0 10⁻⁶ to 10, d 0 to 3, noises 10⁻⁶ to 10⁶, variances 0 to 10¹², all else within ±10⁶; outside
 *   is refused
 * @source Gelman et al., Bayesian Data Analysis, ch. 14 (normal linear model); Minka 2001, assumed-density filtering for
 *   the floors (both from memory)
 * @example bayesLine({ prior: { mean: [0], covariance: [[1]] }, points: [{ at: [1], seen: 1, noise: 1 }], scale: 1, scaleSpread: 0 }) //=> { ok: true, value: [{ weight: 1, belief: { mean: [0.5], covariance: [[0.5]] } }] }
 */
export const bayesLine = ({
  prior,
  points,
  scale,
  scaleSpread,
}: {
  prior: LineBelief;
  points: readonly LinePoint[];
  scale: number;
  scaleSpread: number;
}): Checked<LineMixture> => {
  const outside = firstOutside(
    ['points', points.length, 1, 1000],
    ['scale of the noise', scale, 1e-6, 10],
    ['spread of the noise’s scale', scaleSpread, 0, 3],
    ...prior.mean.map((value) => ['mean believed before', value, -1e6, 1e6] as const),
    ...prior.covariance.map((row, i) => ['variance believed before', row[i] ?? NaN, 0, 1e12] as const),
    ...points.flatMap(({ at, seen, noise }) => [
      ['point seen', seen, -1e6, 1e6] as const,
      ['noise of a point', noise, 1e-6, 1e6] as const,
      ...at.map((value) => ['place of a point', value, -1e6, 1e6] as const),
    ]),
  );
  if (outside) return outside;
  const scales = scaleSpread === 0 ? [0] : deviations;
  const fitted = scales.map((deviation) => {
    let belief = prior;
    let logWeight = -0.5 * deviation ** 2;
    for (const point of points) {
      const next = learned(belief, point, scale * Math.exp(scaleSpread * deviation));
      belief = next.belief;
      logWeight += Math.log(Math.max(next.likelihood, Number.MIN_VALUE));
    }
    return { belief, logWeight };
  });
  const most = Math.max(...fitted.map(({ logWeight }) => logWeight));
  const weights = fitted.map(({ logWeight }) => Math.exp(logWeight - most));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return valid(fitted.map(({ belief }, i) => ({ belief, weight: (weights[i] ?? 0) / whole })));
};

/**
 * The probability that the line lies above a value at a given point.
 * @formula P(θ·x > y) = Σ wₖ·Φ((mₖ·x − y)/√(xᵀCₖx))
 * @param mixture what is believed of the line · @param at x · @param mark y
 * @returns probability, 0 to 1, never rounded; of the line itself, without the noise of a reading
 * @range any
 * @source derived: mixture of normals
 * @example chanceAbove([{ weight: 1, belief: { mean: [0.5], covariance: [[0.5]] } }], [1], 0.5) //=> 0.5
 */
export const chanceAbove = (mixture: LineMixture, at: readonly number[], mark: number): number =>
  mixture.reduce((sum, { weight, belief: { mean, covariance } }) => {
    const variance = covariance.reduce((total, row, i) => total + dot(row, at) * (at[i] ?? 0), 0);
    const sd = Math.sqrt(Math.max(variance, 0));
    const above = dot(mean, at) - mark;
    return sum + weight * (sd > 0 ? normalCdf(above / sd) : Number(above > 0));
  }, 0);
