import { describe, expect, it, test } from 'vitest';
import { normalCdf, normalQuantile, coverage95 } from '../../../../src/glaze/statistics/normal.ts';
import { must } from '../../../helpers/glaze/must.ts';

describe('the standard normal distribution', () => {
  // Abramowitz & Stegun 1964, table 26.1, P(x) to 15 places (from memory)
  it.each([
    [0, 0.5],
    [0.5, 0.691462461274013],
    [1, 0.841344746068543],
    [1.5, 0.933192798731142],
    [2, 0.977249868051821],
    [2.5, 0.993790334674224],
    [3, 0.99865010196837],
  ])('has Φ(%f) = %f', (z, p) => {
    expect(normalCdf(z)).toBeCloseTo(p, 14);
    expect(normalCdf(-z)).toBeCloseTo(1 - p, 14);
  });

  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, area from 0 to x
  it.each([
    [0.1, 0.03983],
    [0.67, 0.24857],
    [1.28, 0.39973],
    [1.96, 0.475],
    [2.58, 0.49506],
  ])('has an area of %f to %f as the NIST table prints it', (z, area) => {
    expect(Math.abs(normalCdf(z) - 0.5 - area)).toBeLessThanOrEqual(0.000005);
  });

  // Abramowitz & Stegun 1964, table 26.2, −log10 Q(x) (from memory)
  it.each([
    [5, 6.54265],
    [10, 23.11805],
  ])('keeps the digits of its far tail at %f', (z, digits) => {
    expect(-Math.log10(normalCdf(-z))).toBeCloseTo(digits, 4);
  });

  // NIST/SEMATECH e-Handbook, 1.3.6.7.2, bottom row of Student's t; 15 digits from Abramowitz & Stegun 26.5 (from memory)
  it.each([
    [0.9, 1.2815515655446],
    [0.95, 1.64485362695147],
    [0.975, 1.95996398454005],
    [0.99, 2.32634787404084],
    [0.995, 2.5758293035489],
    [0.999, 3.09023230616781],
  ])('has its %f quantile at %f', (p, z) => {
    expect(must(normalQuantile(p))).toBeCloseTo(z, 12);
    expect(must(normalQuantile(1 - p))).toBeCloseTo(-z, 12);
  });

  it('changes sign just at one half', () => {
    // φ(0) = 0.398942, so z is near (p − ½)/φ(0) by hand
    expect(must(normalQuantile(0.505))).toBeCloseTo(0.005 / 0.398942, 5);
    expect(must(normalQuantile(0.495))).toBeCloseTo(-0.005 / 0.398942, 5);
    expect(Math.abs(must(normalQuantile(0.5)))).toBeLessThan(1e-12);
  });

  it('refuses a certainty', () => {
    for (const p of [0, 1, -0.1, 1.1, Number.NaN]) expect(normalQuantile(p).ok).toBe(false);
  });
});

test('95 % is covered by the 0.975 quantile on either side', () => {
  expect(coverage95).toBeCloseTo(must(normalQuantile(0.975)), 14);
});
