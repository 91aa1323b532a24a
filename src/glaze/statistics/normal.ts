import { refused, valid, type Checked } from '../checked.ts';

/** Half the width of a 95 % interval in standard uncertainties: Φ⁻¹(0.975). JCGM 100:2008, table G.1 (from memory). */
export const coverage95 = 1.959963984540054;

/** How dense standard normal values lie at z. */
export const normalDensity = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);

/** So far out, Laplace's continued fraction converges in a few steps. */
const far = 5;

/** The tail above z ≥ 5. */
const farTail = (z: number) => {
  let below = z;
  for (let k = 16; k >= 1; k--) below = z + k / below;
  return normalDensity(z) / below;
};

/** The tail above z, 0 ≤ z < 5: a ratio of two polynomials, to double precision. */
const upperTail = (z: number) => {
  const above =
    (((((0.0352624965998911 * z + 0.700383064443688) * z + 6.37396220353165) * z + 33.912866078383) * z +
      112.079291497871) *
      z +
      221.213596169931) *
      z +
    220.206867912376;
  const below =
    ((((((0.0883883476483184 * z + 1.75566716318264) * z + 16.064177579207) * z + 86.7807322029461) * z +
      296.564248779674) *
      z +
      637.333633378831) *
      z +
      793.826512519948) *
      z +
    440.413735824752;
  return (Math.exp(-0.5 * z * z) * above) / below;
};

/**
 * The chance that a standard normal value is at most z.
 * @formula Φ(z) = ∫ from −∞ to z of exp(−x²/2)/√(2π)
 * @param z deviations from the mean, any number; ±∞ give 1 and 0
 * @returns probability, 0 to 1, never rounded; NaN for NaN only
 * @range all z
 * @source Hart et al. 1968, Computer Approximations, no. 5666, as in West 2005, Wilmott Magazine; Abramowitz & Stegun 1964,
 *   26.2.14 (continued fraction); both from memory
 * @example normalCdf(1.96) //=> 0.97500210
 */
export const normalCdf = (z: number): number => {
  if (z < 0) return z > -far ? upperTail(-z) : farTail(-z);
  return 1 - (z < far ? upperTail(z) : farTail(z));
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
    const step = (normalCdf(z) - tail) / normalDensity(z);
    z -= step / (1 + (z * step) / 2);
  }
  return valid(p < 0.5 ? z : -z);
};
