import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benjaminiHochberg } from '../../src/glaze/statistics/benjaminiHochberg.ts';
import { fisherExact, leastFisherP, type TwoRates } from '../../src/glaze/statistics/fisherExact.ts';
import { bayesFactorOfRates, differenceOfRates } from '../../src/glaze/statistics/twoRates.ts';
import { must } from '../helpers/glaze/must.ts';

const ratesUpTo = (most: number): fc.Arbitrary<TwoRates> =>
  fc.tuple(fc.integer({ min: 1, max: most }), fc.integer({ min: 1, max: most })).chain(([of, otherOf]) =>
    fc.record({
      hits: fc.integer({ min: 0, max: of }),
      of: fc.constant(of),
      otherHits: fc.integer({ min: 0, max: otherOf }),
      otherOf: fc.constant(otherOf),
    }),
  );

const factorial = (n: number): bigint => (n < 2 ? 1n : BigInt(n) * factorial(n - 1));
const choose = (n: number, k: number): bigint => factorial(n) / (factorial(k) * factorial(n - k));
/** A quotient of integers to 15 digits. */
const quotient = (above: bigint, below: bigint): number => Number((above * 10n ** 18n) / below) / 1e18;

/** The number of ways to get each table with the same margins, as integers. */
const waysOf = ({ hits, of, otherHits, otherOf }: TwoRates) => {
  const faults = hits + otherHits;
  const ways: { hits: number; count: bigint }[] = [];
  for (let k = 0; k <= Math.min(of, faults); k++)
    if (faults - k <= otherOf) ways.push({ hits: k, count: choose(of, k) * choose(otherOf, faults - k) });
  return ways;
};

const byEnumeration = (rates: TwoRates): number => {
  const ways = waysOf(rates);
  const seen = ways.find(({ hits }) => hits === rates.hits)?.count ?? 0n;
  const sum = (counts: bigint[]) => counts.reduce((a, b) => a + b, 0n);
  const asFar = ways.map(({ count }) => count).filter((count) => count <= seen);
  return quotient(sum(asFar), sum(ways.map(({ count }) => count)));
};

describe('Fisher’s exact test', () => {
  it('is the share of all tables with the same margins that are no likelier, counted in whole numbers', () => {
    fc.assert(
      fc.property(ratesUpTo(60), (rates) => {
        expect(Math.abs(must(fisherExact(rates)) - byEnumeration(rates))).toBeLessThan(1e-12);
      }),
    );
  });

  it('does not mind which side is called which, nor whether faults or good ones are counted', () => {
    fc.assert(
      fc.property(ratesUpTo(500), (rates) => {
        const { hits, of, otherHits, otherOf } = rates;
        const p = must(fisherExact(rates));
        for (const same of [
          { hits: otherHits, of: otherOf, otherHits: hits, otherOf: of },
          { hits: of - hits, of, otherHits: otherOf - otherHits, otherOf },
          { hits, of: hits + otherHits, otherHits: of - hits, otherOf: of + otherOf - hits - otherHits },
        ])
          expect(Math.abs(must(fisherExact(same)) - p)).toBeLessThanOrEqual(1e-9 * p);
      }),
    );
  });

  it('is never under the least that its margins can give', () => {
    fc.assert(
      fc.property(ratesUpTo(40), (rates) => {
        const least = Math.min(
          ...waysOf(rates).map(({ hits }) =>
            byEnumeration({ ...rates, hits, otherHits: rates.hits + rates.otherHits - hits }),
          ),
        );
        expect(Math.abs(must(leastFisherP(rates)) - least)).toBeLessThan(1e-12);
      }),
      { numRuns: 40 },
    );
  });

  it('is as rare as it says when nothing is behind the counts: p ≤ α in at most α of all tables', () => {
    fc.assert(
      fc.property(ratesUpTo(40), fc.double({ min: 0.001, max: 0.5, noNaN: true }), (rates, alpha) => {
        const ways = waysOf(rates);
        const faults = rates.hits + rates.otherHits;
        const struck = ways.filter(
          ({ hits }) => must(fisherExact({ ...rates, hits, otherHits: faults - hits })) <= alpha,
        );
        const sum = (all: typeof ways) => all.reduce((total, { count }) => total + count, 0n);
        expect(quotient(sum(struck), sum(ways))).toBeLessThanOrEqual(alpha * (1 + 1e-9));
      }),
      { numRuns: 60 },
    );
  });
});

describe('the Bayes factor of two rates', () => {
  const beta = (hits: number, misses: number) => factorial(hits) * factorial(misses);

  it('is the quotient of beta functions, in whole numbers', () => {
    fc.assert(
      fc.property(ratesUpTo(60), (rates) => {
        const { hits, of, otherHits, otherOf } = rates;
        const [all, total] = [hits + otherHits, of + otherOf];
        const exact = quotient(
          beta(hits, of - hits) * beta(otherHits, otherOf - otherHits) * factorial(total + 1),
          beta(all, total - all) * factorial(of + 1) * factorial(otherOf + 1),
        );
        const ours = must(bayesFactorOfRates(rates));
        expect(Math.abs(ours - exact)).toBeLessThanOrEqual(1e-10 * ours + 1e-17);
      }),
    );
  });

  it('agrees with the three integrals over every rate, by Simpson’s rule', () => {
    const integral = (hits: number, of: number) => {
      const steps = 20_000;
      const at = (i: number) => (i / steps) ** hits * (1 - i / steps) ** (of - hits);
      let sum = at(0) + at(steps);
      for (let i = 1; i < steps; i++) sum += at(i) * (i % 2 === 1 ? 4 : 2);
      return sum / (3 * steps);
    };
    fc.assert(
      fc.property(ratesUpTo(25), (rates) => {
        const { hits, of, otherHits, otherOf } = rates;
        const k =
          (integral(hits, of) * integral(otherHits, otherOf)) / integral(hits + otherHits, of + otherOf);
        expect(Math.abs(must(bayesFactorOfRates(rates)) / k - 1)).toBeLessThan(1e-8);
      }),
      { numRuns: 30 },
    );
  });
});

describe('the difference of two rates', () => {
  it('lies within its interval, and turns round with its sides', () => {
    fc.assert(
      fc.property(ratesUpTo(500), (rates) => {
        const { hits, of, otherHits, otherOf } = rates;
        const { difference, low, high } = must(differenceOfRates(rates));
        expect(low).toBeLessThanOrEqual(difference);
        expect(high).toBeGreaterThanOrEqual(difference);
        expect(low).toBeGreaterThanOrEqual(-1 - 1e-12);
        expect(high).toBeLessThanOrEqual(1 + 1e-12);
        const turned = must(
          differenceOfRates({ hits: otherHits, of: otherOf, otherHits: hits, otherOf: of }),
        );
        expect(turned.low).toBeCloseTo(-high, 12);
        expect(turned.high).toBeCloseTo(-low, 12);
      }),
    );
  });
});

describe('many tests at once', () => {
  const ps = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 60 });

  it('finds what the step-up rule finds: all up to the last p(i) ≤ iα/m', () => {
    fc.assert(
      fc.property(ps, fc.double({ min: 0.01, max: 0.5, noNaN: true }), (all, alpha) => {
        const rising = [...all].sort((a, b) => a - b);
        const last = rising.findLastIndex((p, i) => p * (all.length / (i + 1)) <= alpha);
        const found = must(benjaminiHochberg(all)).filter((q) => q <= alpha);
        expect(found).toHaveLength(last + 1);
      }),
    );
  });

  it('never calls anything surer than it was alone', () => {
    fc.assert(
      fc.property(ps, (all) => {
        must(benjaminiHochberg(all)).forEach((q, i) => {
          expect(q).toBeGreaterThanOrEqual(all[i] ?? 1);
          expect(q).toBeLessThanOrEqual(1);
        });
      }),
    );
  });
});
