import { outside, valid, type Checked } from '../checked.ts';

/**
 * How many things that nobody logged to expect over some days, when their rate is learned from what went before.
 * @formula m = days·α/β; P(none) = (α/(α + m))^α; given some: E = m/(1 − P(none)), E² + variance = (m + m²(1 + 1/α))/(1 − P(none))
 * @param shape α, events counted and believed before · @param over β, days that they came in · @param days from now
 * @returns the chance of none, and mean and variance of how many there are when there are some, never rounded
 * @range α 10⁻⁶ to 10⁶, β 10⁻³ to 10⁹ days, days above 0 to 10⁴; outside is refused
 * @source negative binomial as a gamma mixture of Poisson, Johnson, Kemp & Kotz 2005, Univariate Discrete Distributions, 5 (from memory)
 * @example countsOfEvents({ shape: 1, over: 20, days: 20 }) //=> { ok: true, value: { none: 0.5, mean: 2, variance: 2 } }
 */
export const countsOfEvents = ({
  shape,
  over,
  days,
}: Record<'shape' | 'over' | 'days', number>): Checked<Record<'none' | 'mean' | 'variance', number>> => {
  const refusal =
    outside('events before', shape, 1e-6, 1e6) ??
    outside('days before', over, 1e-3, 1e9) ??
    outside('days', days, Number.MIN_VALUE, 1e4);
  if (refusal) return refusal;
  const m = (days * shape) / over;
  // ln P(none), so that few events in a short while keep their digits.
  const log = -shape * Math.log1p(m / shape);
  const some = -Math.expm1(log);
  const mean = some > 0 ? m / some : 1;
  const square = some > 0 ? (m + m * m * (1 + 1 / shape)) / some : 1;
  return valid({ none: Math.exp(log), mean, variance: Math.max(0, square - mean * mean) });
};
