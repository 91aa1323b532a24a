import { refused, valid, type Checked } from '../checked.ts';

/** Half the width of a 95 % interval in standard uncertainties: Φ⁻¹(0.975). JCGM 100:2008, table G.1 (from memory). */
export const coverage95 = 1.959963984540054;

const density = (z: number) => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);

/**
 * The tail above z ≥ 3, by Laplace's continued fraction, because 1 − Φ(z) would lose its digits. It converges faster
 * farther out; so many terms are enough for double precision.
 */
const upperTail = (z: number) => {
  let below = z;
  for (let k = Math.ceil(400 / (z * z)) + 8; k >= 1; k--) below = z + k / below;
  return density(z) / below;
};

/** Area from 0 to z, |z| < 3: all terms are positive, so no digits cancel. */
const areaFromZero = (z: number) => {
  let term = z;
  let sum = z;
  for (let k = 3; Math.abs(term) > Math.abs(sum) * 1e-17; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return density(z) * sum;
};

/**
 * The chance that a standard normal value is at most z.
 * @formula Φ(z) = ∫ from −∞ to z of exp(−x²/2)/√(2π)
 * @param z deviations from the mean, any number; ±∞ give 1 and 0
 * @returns probability, 0 to 1, never rounded; NaN for NaN only
 * @range all z
 * @source Abramowitz & Stegun 1964, 26.2.11 (series) and 26.2.14 (continued fraction), from memory
 * @example normalCdf(1.96) //=> 0.97500210
 */
export const normalCdf = (z: number): number => {
  if (z >= 3) return 1 - upperTail(z);
  if (z <= -3) return upperTail(-z);
  return 0.5 + areaFromZero(z);
};

/** A first estimate, good to 0.00045, refined below. Abramowitz & Stegun 1964, 26.2.23 (from memory). */
const guess = (tail: number) => {
  const t = Math.sqrt(-2 * Math.log(tail));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return t - above / below;
};

/**
 * The z below which a standard normal value falls with the given chance.
 * @formula Φ(z) = p solved for z
 * @param p probability, above 0 and below 1
 * @returns z, deviations from the mean, never rounded
 * @range p above 0 and below 1; outside is refused
 * @source Abramowitz & Stegun 1964, 26.2.23 (from memory), polished by Halley's rule on Φ
 * @example normalQuantile(0.975) //=> { ok: true, value: 1.959964 }
 */
export const normalQuantile = (p: number): Checked<number> => {
  if (!(p > 0 && p < 1)) return refused('probability', p, 0, 1);
  const tail = Math.min(p, 1 - p);
  let z = -guess(tail);
  for (let i = 0; i < 3; i++) {
    const step = (normalCdf(z) - tail) / density(z);
    z -= step / (1 + (z * step) / 2);
  }
  return valid(p < 0.5 ? z : -z);
};
