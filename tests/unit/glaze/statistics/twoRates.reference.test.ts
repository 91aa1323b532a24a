import { describe, expect, it } from 'vitest';
import { benjaminiHochberg } from '../../../../src/glaze/statistics/benjaminiHochberg.ts';
import { fisherExact, leastFisherP } from '../../../../src/glaze/statistics/fisherExact.ts';
import { bayesFactorOfRates, differenceOfRates } from '../../../../src/glaze/statistics/twoRates.ts';
import { checkRows } from '../../../helpers/glaze/checkRows.ts';
import { must } from '../../../helpers/glaze/must.ts';
import { input, type ReferenceRow } from '../../../helpers/glaze/referenceRows.ts';

const rates = (row: ReferenceRow) => ({
  hits: input(row, 'hits'),
  of: input(row, 'of'),
  otherHits: input(row, 'otherHits'),
  otherOf: input(row, 'otherOf'),
});

checkRows({
  'two-rates': [
    [/^fisher/, (row) => must(fisherExact(rates(row)))],
    [/^bayes/, (row) => must(bayesFactorOfRates(rates(row)))],
    [/^difference-low/, (row) => must(differenceOfRates(rates(row))).low],
    [/^difference-high/, (row) => must(differenceOfRates(rates(row))).high],
  ],
});

describe('many tests at once', () => {
  // Benjamini & Hochberg 1995, J. R. Statist. Soc. B 57, 289, 4.2: myocardial infarction, 15 hypotheses
  const published = [
    0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528,
    0.759, 1,
  ];

  it('finds the four that the paper finds at 0.05, in whatever order they come', () => {
    const mixed = [...published.slice(7), ...published.slice(0, 7)].reverse();
    const qs = must(benjaminiHochberg(mixed));
    const found = mixed.filter((_, i) => (qs[i] ?? 1) <= 0.05);
    expect(found.sort()).toEqual([0.0001, 0.0004, 0.0019, 0.0095]);
  });

  it('adjusts each as SciPy 1.17.1 does (false_discovery_control)', () => {
    const scipy = [
      0.0015, 0.003, 0.0095, 0.035625, 0.0603, 0.06385714, 0.06385714, 0.0645, 0.0765, 0.486, 0.58118182,
      0.714875, 0.75323077, 0.81321429, 1,
    ];
    must(benjaminiHochberg(published)).forEach((q, i) => expect(q).toBeCloseTo(scipy[i] ?? NaN, 8));
  });

  it('returns nothing for no tests, and refuses what is no probability', () => {
    expect(must(benjaminiHochberg([]))).toEqual([]);
    for (const p of [-0.01, 1.01, NaN]) expect(benjaminiHochberg([0.5, p]).ok).toBe(false);
  });
});

describe('impossible counts', () => {
  it.each([
    [{ hits: 3, of: 2, otherHits: 0, otherOf: 1 }],
    [{ hits: -1, of: 2, otherHits: 0, otherOf: 1 }],
    [{ hits: 0.5, of: 2, otherHits: 0, otherOf: 1 }],
    [{ hits: 0, of: 200_000, otherHits: 0, otherOf: 1 }],
    [{ hits: NaN, of: 2, otherHits: 0, otherOf: 1 }],
  ])('are refused: %j', (counts) => {
    for (const formula of [fisherExact, leastFisherP, bayesFactorOfRates, differenceOfRates])
      expect(formula(counts).ok).toBe(false);
  });

  it('have no difference when one side was never seen', () => {
    expect(differenceOfRates({ hits: 0, of: 0, otherHits: 1, otherOf: 3 }).ok).toBe(false);
    expect(must(fisherExact({ hits: 0, of: 0, otherHits: 1, otherOf: 3 }))).toBe(1);
    expect(must(bayesFactorOfRates({ hits: 0, of: 0, otherHits: 1, otherOf: 3 }))).toBeCloseTo(1, 12);
  });
});
