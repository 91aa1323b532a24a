import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addedByTie, bothAbove, bothBetween } from '../../../../src/glaze/statistics/bivariateNormal.ts';
import { normalCdf } from '../../../../src/glaze/statistics/normal.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** P(X > h, Y > k) by Simpson's rule over x of φ(x)·P(Y > k | x): nothing of what is tested is in it. */
const bySimpson = (h: number, k: number, r: number): number => {
  const steps = 20_000;
  const [from, to] = [Math.max(h, -9), 9];
  if (from >= to) return 0;
  const width = (to - from) / steps;
  const at = (x: number) =>
    (Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI)) * normalCdf((r * x - k) / Math.sqrt(1 - r * r));
  let sum = at(from) + at(to);
  for (let i = 1; i < steps; i++) sum += (i % 2 ? 4 : 2) * at(from + i * width);
  return (sum * width) / 3;
};

describe('two normal values that vary together', () => {
  // P(X < x, Y < y). National Bureau of Standards, Applied Mathematics Series 50, 1959, in
  // Burkardt's table of test values, whose last digits differ from its own limits: 1/6 is printed as 0.166666666654
  it.each([
    [-2, 1, 0.5, 0.02260327218569867],
    [-1, 1, 0.5, 0.15487295185841],
    [1, 1, 0.5, 0.7452035868929476],
    [2, 1, 0.5, 0.8318608306874188],
    [3, 1, 0.5, 0.8410314261134202],
    [-0.2, 0.5, -0.9, 0.1377019384919464],
    [-0.2, 0.5, -0.6, 0.2010067421506235],
    [-0.2, 0.5, -0.3, 0.2485057781834286],
    [-0.2, 0.5, 0, 0.2909261168683812],
    [-0.2, 0.5, 0.3, 0.3320262544108028],
    [-0.2, 0.5, 0.6, 0.3742210899871168],
    [-0.2, 0.5, 0.9, 0.4162100291953678],
    [1, 0.5, 0.673, 0.6508271498838664],
  ])('have P(X < %f, Y < %f) at a correlation of %f as printed', (x, y, r, chance) => {
    expect(bothAbove(-x, -y, r)).toBeCloseTo(chance, 8);
  });

  // Patefield & Tandy 2000, J. Statist. Software 5(5), Owen's T; Owen 1956 for the chance that follows from it:
  // P(X < h, Y < 0) = Φ(h)/2 − T(h, a), a = −r/√(1 − r²), h above 0
  it.each([
    [0.0625, 0.25, 0.03891193023470137],
    [2, 0.5, 0.008625077985521507],
    [1, 0.9999975, 0.06674180897822893],
    [4.78125, 0.0625, 1.0632974804687464e-7],
  ])('agree with Owen’s T(%f, %f)', (h, a, t) => {
    const r = -a / Math.sqrt(1 + a * a);
    expect(Math.abs(bothAbove(-h, 0, r) - (normalCdf(h) / 2 - t))).toBeLessThan(1e-14);
  });

  it('have a quadrant of 1/4 + asin(r)/2π, as Sheppard found in 1899', () => {
    fc.assert(
      fc.property(between(-1, 1), (r) => {
        expect(bothAbove(0, 0, r)).toBeCloseTo(0.25 + Math.asin(r) / (2 * Math.PI), 13);
      }),
    );
  });

  it('agree with the plain integral, wherever the marks and however close the correlation', () => {
    fc.assert(
      fc.property(
        between(-5, 5),
        between(-5, 5),
        fc.oneof(between(-0.99, 0.99), between(0.92, 0.995), between(-0.995, -0.92)),
        (h, k, r) => {
          expect(Math.abs(bothAbove(h, k, r) - bySimpson(h, k, r))).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('fall apart into the chance of each when nothing ties them, and into the lesser when they are one', () => {
    fc.assert(
      fc.property(between(-6, 6), between(-6, 6), (h, k) => {
        expect(bothAbove(h, k, 0)).toBeCloseTo(normalCdf(-h) * normalCdf(-k), 13);
        expect(bothAbove(h, k, 1)).toBeCloseTo(normalCdf(-Math.max(h, k)), 13);
        expect(bothAbove(h, k, -1)).toBeCloseTo(Math.max(0, normalCdf(-h) - normalCdf(k)), 13);
      }),
    );
  });

  it('fill the plane with four rectangles, whatever lies open', () => {
    fc.assert(
      fc.property(between(-8, 8), between(-8, 8), between(-1, 1), (h, k, r) => {
        const [left, right] = [
          { low: -Infinity, high: h },
          { low: h, high: Infinity },
        ];
        const [down, up] = [
          { low: -Infinity, high: k },
          { low: k, high: Infinity },
        ];
        const parts = [left, right].flatMap((one) => [down, up].map((other) => bothBetween(one, other, r)));
        expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 12);
        for (const part of parts) {
          expect(part).toBeGreaterThanOrEqual(0);
          expect(part).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  const mark = fc.oneof(between(-4, 4), between(-45, 45), fc.constantFrom(-Infinity, Infinity, 0));
  const marks = fc.tuple(mark, mark).map(([one, other]) => ({
    low: Math.min(one, other),
    high: Math.max(one, other),
  }));
  const tie = fc.oneof(between(-1, 1), between(-1e-6, 1e-6), between(0.9, 1), fc.constantFrom(-1, 0, 1));

  it('have as much more in a rectangle for their tie as its four corners tell one by one', () => {
    fc.assert(
      fc.property(marks, marks, tie, ({ low: a, high: b }, { low: c, high: d }, r) => {
        const corners = bothAbove(a, c, r) - bothAbove(b, c, r) - bothAbove(a, d, r) + bothAbove(b, d, r);
        const untied = (normalCdf(b) - normalCdf(a)) * (normalCdf(d) - normalCdf(c));
        const added = addedByTie({ low: a, high: b }, { low: c, high: d }, r);
        expect(Math.abs(added - (corners - untied))).toBeLessThan(1e-12);
      }),
      { numRuns: 2000 },
    );
  });

  it('are off by no more than what was asked for', () => {
    fc.assert(
      fc.property(marks, marks, tie, between(-14, -2), (first, second, r, digits) => {
        const within = 10 ** digits;
        const difference = addedByTie(first, second, r, within) - addedByTie(first, second, r);
        expect(Math.abs(difference)).toBeLessThan(within + 1e-15);
      }),
      { numRuns: 2000 },
    );
  });
});
