import { firstOutside, valid, type Checked } from '../checked.ts';
import { bisection } from './bisection.ts';
import { logGamma } from './logGamma.ts';

/** Regularized incomplete beta I(x; a, b) by its continued fraction, summed by Lentz's method. DLMF 8.17.22 (from memory). */
const incompleteBeta = (x: number, a: number, b: number): number => {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(
    logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x) - Math.log(a),
  );
  let numerator = 1;
  let denominator = 1 / (1 - ((a + b) * x) / (a + 1));
  let value = denominator;
  for (let m = 1; m <= 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    denominator = 1 / (1 + even * denominator);
    numerator = 1 + even / numerator;
    value *= numerator * denominator;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    denominator = 1 / (1 + odd * denominator);
    numerator = 1 + odd / numerator;
    const change = numerator * denominator;
    value *= change;
    if (Math.abs(change - 1) < 1e-15) break;
  }
  return front * value;
};

const upperTail = (t: number, degrees: number) =>
  incompleteBeta(degrees / (degrees + t * t), degrees / 2, 0.5) / 2;

/**
 * Quantile of Student's t: it sets how wide an interval from a few test tiles must be.
 * @formula P(T ≤ t) = p solved for t, P from the regularized incomplete beta
 * @param p probability, above 0 and below 1 · @param degrees degrees of freedom, 1 or more
 * @returns t, never rounded
 * @range p 10⁻⁶ to 1 − 10⁻⁶, degrees 1 to 10⁴; outside is refused
 * @source NIST Digital Library of Mathematical Functions, 8.17; Abramowitz & Stegun 1964, 26.7.1 (from memory)
 * @example studentQuantile({ p: 0.95, degrees: 5 }) //=> { ok: true, value: 2.015 }
 */
export const studentQuantile = ({ p, degrees }: { p: number; degrees: number }): Checked<number> => {
  const outside = firstOutside(['probability', p, 1e-6, 1 - 1e-6], ['degrees of freedom', degrees, 1, 1e4]);
  if (outside) return outside;
  const tail = Math.min(p, 1 - p);
  const isBelow = (t: number) => upperTail(t, degrees) > tail;
  let high = 1;
  while (isBelow(high)) high *= 2;
  const t = p === 0.5 ? 0 : bisection(isBelow, { low: 0, high, rounds: 80 });
  return valid(p < 0.5 ? -t : t);
};
