import { firstOutside, refused, valid, type Checked } from '../checked.ts';

/** How often a fault came with a condition, and how often without it. */
export interface TwoRates {
  hits: number;
  of: number;
  otherHits: number;
  otherOf: number;
}

/** A larger count of firings must be a mistake. */
const mostCounted = 100_000;

/** Undefined when the four are valid counts: whole, and no part larger than its whole. */
export const notTwoRates = ({ hits, of, otherHits, otherOf }: TwoRates): Checked<never> | undefined => {
  const outside = firstOutside(
    ['results with the condition', of, 0, mostCounted],
    ['results without it', otherOf, 0, mostCounted],
    ['faults with the condition', hits, 0, of],
    ['faults without it', otherHits, 0, otherOf],
  );
  const broken = [hits, of, otherHits, otherOf].find((count) => !Number.isInteger(count));
  const whole = Math.round(broken ?? 0);
  return outside ?? (broken === undefined ? undefined : refused('whole count', broken, whole, whole));
};

/** Tables as likely as the observed one are counted in, whatever rounding does to their probabilities. */
const alike = 1 + 1e-7;

/**
 * Fisher's exact test: the probability that chance alone gives counts at least as far apart as these.
 * @formula p = Σ P(k) over every table with the same margins and P(k) ≤ P(observed);
 * P(k) = C(of, k)·C(otherOf, faults − k)/C(of + otherOf, faults), faults = hits + otherHits
 * @param rates counts: hits of so many with the condition, otherHits of otherOf without it
 * @returns two-sided p, 0 to 1, never rounded; below 10⁻³⁰⁰ it is 0
 * @range whole numbers, no more hits than there are, at most 100 000 on a side; outside is refused
 * @source Fisher 1935, The Design of Experiments, II; two sides by the probability of tables: Freeman & Halton 1951 (from memory)
 * @example fisherExact({ hits: 3, of: 4, otherHits: 1, otherOf: 4 }) //=> { ok: true, value: 0.4857 }
 */
export const fisherExact = (rates: TwoRates): Checked<number> => {
  const broken = notTwoRates(rates);
  if (broken) return broken;
  const { hits, of, otherHits, otherOf } = rates;
  const faults = hits + otherHits;
  const [low, high] = [Math.max(0, faults - otherOf), Math.min(of, faults)];
  const rise = (k: number) => ((of - k) * (faults - k)) / ((k + 1) * (otherOf - faults + k + 1));
  // Summed outwards from the likeliest table, so that the terms left out are negligible.
  const mode = Math.floor(((of + 1) * (faults + 1)) / (of + otherOf + 2));
  const weights = new Map([[mode, 1]]);
  for (let k = mode, weight = 1; k < high; k++) weights.set(k + 1, (weight *= rise(k)));
  for (let k = mode, weight = 1; k > low; k--) weights.set(k - 1, (weight /= rise(k - 1)));
  const most = (weights.get(hits) ?? 0) * alike;
  let [all, asFar] = [0, 0];
  for (const weight of weights.values()) {
    all += weight;
    if (weight <= most) asFar += weight;
  }
  return valid(Math.min(1, asFar / all));
};

/**
 * The smallest p that a table with these margins can give. When it is above the significance level, the pair cannot
 * be tested.
 * @formula the lesser p of the two tables with the same margins and the fewest, or the most, hits
 * @param rates counts, as for fisherExact; only their margins matter
 * @returns p, 0 to 1, never rounded
 * @range as fisherExact; outside is refused
 * @source Tarone 1990, Biometrics 46, 515 (from memory)
 * @example leastFisherP({ hits: 0, of: 4, otherHits: 4, otherOf: 4 }) //=> { ok: true, value: 0.02857 }
 */
export const leastFisherP = (rates: TwoRates): Checked<number> => {
  const broken = notTwoRates(rates);
  if (broken) return broken;
  const { hits, of, otherHits, otherOf } = rates;
  const faults = hits + otherHits;
  const ends = [Math.max(0, faults - otherOf), Math.min(of, faults)].map((k) =>
    fisherExact({ hits: k, of, otherHits: faults - k, otherOf }),
  );
  return valid(Math.min(...ends.map((end) => (end.ok ? end.value : 1))));
};
