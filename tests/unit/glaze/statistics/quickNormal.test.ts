import fc from 'fast-check';
import { expect, it } from 'vitest';
import { normalCdf } from '../../../../src/glaze/statistics/normal.ts';
import { quickCdf, quickDensity } from '../../../../src/glaze/statistics/quickNormal.ts';

const anywhere = fc.oneof(
  fc.double({ min: -9, max: 9, noNaN: true }),
  fc.double({ min: -14, max: 14, noNaN: true }),
  fc.double({ noNaN: true }),
);

it('tells from a table what the plain formulas tell, far out and in between its marks too', () => {
  fc.assert(
    fc.property(anywhere, (z) => {
      expect(Math.abs(quickCdf(z) - normalCdf(z))).toBeLessThan(1e-15);
      const density = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
      expect(Math.abs(quickDensity(z) - density)).toBeLessThanOrEqual(
        Math.abs(z) < 13 ? 1e-13 * density : 1e-37,
      );
    }),
    { numRuns: 5000 },
  );
});

it('knows nothing of what is no number', () => {
  expect(quickCdf(NaN)).toBeNaN();
  expect(quickDensity(NaN)).toBeNaN();
});

// Φ: Abramowitz & Stegun 1964, table 26.1 (from memory).
it.each([
  [0, 0.5],
  [1, 0.841344746068543],
  [2, 0.977249868051821],
  [-3, 0.00134989803163],
])('gives Φ(%f) as printed', (z, chance) => {
  expect(quickCdf(z)).toBeCloseTo(chance, 14);
});
