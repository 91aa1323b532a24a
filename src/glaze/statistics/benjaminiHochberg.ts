import { firstOutside, valid, type Checked } from '../checked.ts';

/**
 * The q-value of each of many tests: the expected share of false discoveries when this test, and every test at least
 * as significant, is called a discovery.
 * @formula q(i) = min over j ≥ i of m·p(j)/j, the p in order, m of them; calling those with q ≤ α finds keeps false ones to α
 * @param ps the p of each test, 0 to 1, in any order
 * @returns q of each, in the same order, 0 to 1, never rounded
 * @range every p 0 to 1; outside is refused
 * @source Benjamini & Hochberg 1995, J. R. Statist. Soc. B 57, 289
 * @example benjaminiHochberg([0.04, 0.01, 0.03]) //=> { ok: true, value: [0.04, 0.03, 0.04] }
 */
export const benjaminiHochberg = (ps: readonly number[]): Checked<number[]> => {
  const outside = firstOutside(...ps.map((p) => ['probability', p, 0, 1] as const));
  if (outside) return outside;
  const falling = ps.map((_, i) => i).sort((i, j) => (ps[j] ?? 0) - (ps[i] ?? 0));
  const qs = ps.map(() => 1);
  let least = 1;
  for (const [place, i] of falling.entries()) {
    least = Math.min(least, (ps[i] ?? 1) * (ps.length / (ps.length - place)));
    qs[i] = least;
  }
  return valid(qs);
};
