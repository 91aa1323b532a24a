import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countsOfEvents } from '../../../../src/glaze/statistics/countsOfEvents.ts';
import { truncatedNormal } from '../../../../src/glaze/statistics/truncatedNormal.ts';
import { must } from '../../../helpers/glaze/must.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Moments of φ between two marks by Simpson's rule, taken relative to φ(nearest) so that the far tail keeps its digits. */
const bySimpson = (low: number, high: number) => {
  const steps = 4_000;
  const [from, to] = [Math.max(low, -45), Math.min(high, 45)];
  const nearest = from > 0 ? from : to < 0 ? to : 0;
  const width = (to - from) / steps;
  const sums = [0, 1, 2].map((power) => {
    const at = (x: number) => x ** power * Math.exp((nearest * nearest - x * x) / 2);
    let sum = at(from) + at(to);
    for (let i = 1; i < steps; i++) sum += (i % 2 ? 4 : 2) * at(from + i * width);
    return (sum * width) / 3;
  });
  const [whole = 0, first = 0, second = 0] = sums;
  return { mean: first / whole, variance: second / whole - (first / whole) ** 2 };
};

describe('a normal value that is known to lie between two marks', () => {
  it('has the moments of the half-normal when it is known to be above its mean: √(2/π) and 1 − 2/π', () => {
    const { chance, mean, variance } = must(truncatedNormal({ low: 0, high: Infinity }));
    expect(chance).toBeCloseTo(0.5, 14);
    expect(mean).toBeCloseTo(Math.sqrt(2 / Math.PI), 14);
    expect(variance).toBeCloseTo(1 - 2 / Math.PI, 14);
  });

  it('has the moments that the plain integral gives', () => {
    fc.assert(
      fc.property(between(-6, 6), between(0.05, 4), (low, wide) => {
        const { mean, variance } = must(truncatedNormal({ low, high: low + wide }));
        const expected = bySimpson(low, low + wide);
        expect(mean).toBeCloseTo(expected.mean, 8);
        expect(variance).toBeCloseTo(expected.variance, 8);
      }),
      { numRuns: 60 },
    );
  });

  it('stays within its marks, ever so far out', () => {
    fc.assert(
      fc.property(between(-30, 30), between(0.001, 60), (low, wide) => {
        const { chance, mean, variance } = must(truncatedNormal({ low, high: low + wide }));
        expect(chance).toBeGreaterThan(0);
        expect(mean).toBeGreaterThan(low - 1e-6);
        expect(mean).toBeLessThan(low + wide + 1e-6);
        expect(variance).toBeGreaterThanOrEqual(0);
        expect(variance).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('is refused where nothing of the curve is left, and between marks that are one', () => {
    expect(truncatedNormal({ low: 31, high: Infinity }).ok).toBe(false);
    expect(truncatedNormal({ low: -Infinity, high: -31 }).ok).toBe(false);
    expect(truncatedNormal({ low: 1, high: 1 }).ok).toBe(false);
    expect(truncatedNormal({ low: NaN, high: 1 }).ok).toBe(false);
  });
});

describe('events at a rate that is learned', () => {
  it('come by the geometric distribution when one was counted before: half the time none, then 2 ± √2', () => {
    // By hand: α = 1 and m = 1 make P(k) = 2^−(k+1); given k ≥ 1 its mean is 2, its variance 2.
    expect(must(countsOfEvents({ shape: 1, over: 20, days: 20 }))).toEqual({
      none: expect.closeTo(0.5, 12),
      mean: expect.closeTo(2, 12),
      variance: expect.closeTo(2, 12),
    });
  });

  it('come as Poisson says once the rate is well known', () => {
    // Poisson of mean 0.7: P(0) = e^−0.7, mean given some 0.7/(1 − e^−0.7)
    const { none, mean } = must(countsOfEvents({ shape: 1e6, over: 1e7, days: 7 }));
    expect(none).toBeCloseTo(Math.exp(-0.7), 6);
    expect(mean).toBeCloseTo(0.7 / (1 - Math.exp(-0.7)), 6);
  });

  it('are at most one in a moment', () => {
    const { none, mean, variance } = must(countsOfEvents({ shape: 1, over: 20, days: 1e-6 }));
    expect(1 - none).toBeCloseTo(5e-8, 12);
    expect(mean).toBeCloseTo(1, 6);
    expect(variance).toBeCloseTo(0, 6);
  });

  it('are refused without a day to come in', () => {
    expect(countsOfEvents({ shape: 1, over: 20, days: 0 }).ok).toBe(false);
    expect(countsOfEvents({ shape: 0, over: 20, days: 1 }).ok).toBe(false);
  });
});
