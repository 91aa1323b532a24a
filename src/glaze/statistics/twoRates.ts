import { firstOutside, valid, type Checked } from '../checked.ts';
import { notTwoRates, type TwoRates } from './fisherExact.ts';
import { logGamma } from './logGamma.ts';
import { coverage95 } from './normal.ts';

/** ln B(hits + 1, misses + 1): the marginal likelihood of a binomial under a uniform prior. */
const logEvidence = (hits: number, of: number) =>
  logGamma(hits + 1) + logGamma(of - hits + 1) - logGamma(of + 2);

/**
 * Bayes factor for two different rates of a fault against one common rate.
 * @formula K = B(a+1, b+1)·B(c+1, d+1)/B(a+c+1, b+d+1); a, b faults and none with the condition, c, d without;
 * every rate equally likely before, Beta(1, 1)
 * @param rates counts: hits of so many with the condition, otherHits of otherOf without it
 * @returns Bayes factor, above 0; over 1 speaks for two rates, under 1 for one; never rounded, the greatest number when it is beyond that
 * @range whole numbers, no more hits than there are, at most 100 000 on a side; outside is refused
 * @source derived: the integral of a binomial over a uniform rate is a beta function; Jeffreys 1961, Theory of Probability, 5.1 (from memory)
 * @example bayesFactorOfRates({ hits: 6, of: 9, otherHits: 2, otherOf: 30 }) //=> { ok: true, value: 217.26 }
 */
export const bayesFactorOfRates = (rates: TwoRates): Checked<number> => {
  const broken = notTwoRates(rates);
  if (broken) return broken;
  const { hits, of, otherHits, otherOf } = rates;
  const log =
    logEvidence(hits, of) + logEvidence(otherHits, otherOf) - logEvidence(hits + otherHits, of + otherOf);
  return valid(Math.min(Number.MAX_VALUE, Math.exp(log)));
};

/** Wilson score interval at 95 %. Wilson 1927. */
const wilson = (hits: number, of: number) => {
  const z2 = coverage95 ** 2;
  const half = coverage95 * Math.sqrt(z2 + 4 * hits * (1 - hits / of));
  const middle = 2 * hits + z2;
  const below = 2 * (of + z2);
  return { low: (middle - half) / below, high: (middle + half) / below };
};

/**
 * The difference between the fault's rate with the condition and without it, with its 95 % interval.
 * @formula d = p₁ − p₂; low = d − √[(p₁ − l₁)² + (u₂ − p₂)²], high = d + √[(u₁ − p₁)² + (p₂ − l₂)²]; l, u by Wilson's score
 * @param rates counts: hits of so many with the condition, otherHits of otherOf without it
 * @returns difference of the rates and its interval, −1 to 1, never rounded
 * @range whole numbers, at least 1 on each side, no more hits than there are; outside is refused
 * @source Newcombe 1998, Statistics in Medicine 17, 873, method 10 (from memory); Wilson 1927
 * @example differenceOfRates({ hits: 56, of: 70, otherHits: 48, otherOf: 80 }) //=> { ok: true, value: { difference: 0.2, low: 0.0524, high: 0.3339 } }
 */
export const differenceOfRates = (
  rates: TwoRates,
): Checked<{ difference: number; low: number; high: number }> => {
  const broken =
    notTwoRates(rates) ??
    firstOutside(
      ['results with the condition', rates.of, 1, Infinity],
      ['results without it', rates.otherOf, 1, Infinity],
    );
  if (broken) return broken;
  const [one, other] = [rates.hits / rates.of, rates.otherHits / rates.otherOf];
  const [own, its] = [wilson(rates.hits, rates.of), wilson(rates.otherHits, rates.otherOf)];
  const difference = one - other;
  return valid({
    difference,
    low: difference - Math.hypot(one - own.low, its.high - other),
    high: difference + Math.hypot(own.high - one, other - its.low),
  });
};
