import { describe, expect, it } from 'vitest';
import { addedSquare, repeatability } from '../../../../src/glaze/statistics/repeatability.ts';
import { must } from '../../../helpers/glaze/must.ts';

describe('how well readings repeat', () => {
  // Quantiles of chi-square at 0.975 and 0.025. Abramowitz & Stegun 1964, table 26.8 (from memory)
  it.each([
    [6, 14.449, 1.2373],
    [10, 20.483, 3.247],
    [30, 46.979, 16.791],
    [100, 129.561, 74.222],
  ])('has the interval of chi-square with %f degrees', (degrees, above, below) => {
    const { sd, low, high } = must(
      repeatability({ sd: 1, worth: 4, squares: degrees - 4, count: degrees - 4 }),
    );
    expect(sd).toBeCloseTo(1, 12);
    expect(low / Math.sqrt(degrees / above)).toBeCloseTo(1, 2);
    expect(Math.abs(high / Math.sqrt(degrees / below) - 1)).toBeLessThan(0.02);
  });

  it('adds up squares about the mean, one reading after the other', () => {
    // 10, 12, 17: mean 13, squares 9 + 1 + 16
    const second = addedSquare({ mean: 10, count: 1 }, 12);
    expect(second + addedSquare({ mean: 11, count: 2 }, 17)).toBeCloseTo(26, 12);
  });

  it('stays as believed before until something was repeated', () => {
    expect(must(repeatability({ sd: 0.01, worth: 6, squares: 0, count: 0 })).sd).toBeCloseTo(0.01, 12);
    expect(repeatability({ sd: 0, worth: 6, squares: 0, count: 0 }).ok).toBe(false);
  });
});
