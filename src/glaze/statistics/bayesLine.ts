import { firstOutside, valid, type Checked } from '../checked.ts';
import { normalCdf } from './normal.ts';

/** What is known of a line's coefficients: their means and how they vary together. */
export interface LineBelief {
  mean: readonly number[];
  covariance: readonly (readonly number[])[];
}

/** A point that was seen, or a floor that it lay above, with one standard deviation of noise for a scale of 1. */
export interface LinePoint {
  at: readonly number[];
  seen: number;
  /** Nothing was read but that it is above `seen`. */
  above?: true;
  noise: number;
}

/** Beliefs for several scales of the noise, each with its weight; the weights sum to 1. */
export type LineMixture = readonly { weight: number; belief: LineBelief }[];

const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
const density = (z: number) => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);

/** The belief after one more point, and how likely the point was before. */
const learned = (
  { mean, covariance }: LineBelief,
  { at, seen, above, noise }: LinePoint,
  scale: number,
): { belief: LineBelief; likelihood: number } => {
  const along = covariance.map((row) => dot(row, at));
  // What decimals lose must not leave less than nothing.
  const sd = Math.sqrt(Math.max(0, dot(along, at)) + (noise * scale) ** 2);
  const z = (dot(mean, at) - seen) / sd;
  const chance = above ? normalCdf(z) : density(z) / sd;
  // A floor far above belief: the tail's own ratio, where both would be lost to underflow.
  const ratio = above ? (z > -30 ? density(z) / normalCdf(z) : -z - 1 / z) : -z;
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

/** Scales of the noise, evenly over their logarithm, ±2 deviations of it, and the prior weight of each. */
const deviations = [-2, -4 / 3, -2 / 3, 0, 2 / 3, 4 / 3, 2];

/**
 * The line that a few readings draw, with what was believed of it before, some of them known only to lie above a mark.
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
 * The chance that the line lies above a mark at a place.
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
