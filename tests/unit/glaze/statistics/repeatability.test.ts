import { describe, expect, it } from 'vitest';
import { addedSquare, repeatability } from '../../../../src/glaze/statistics/repeatability.ts';
import { must } from '../../../helpers/glaze/must.ts';

describe('how well readings repeat', () => {
  it('is the mean of the squares, of those believed before and of those repeated', () => {
    // 4 of 1 and 5 of 4 are 24 in 9.
    expect(must(repeatability({ sd: 1, worth: 4, squares: 20, count: 5 }))).toBeCloseTo(
      Math.sqrt(24 / 9),
      12,
    );
  });

  it('adds up squares about the mean, one reading after the other', () => {
    // 10, 12, 17: mean 13, squares 9 + 1 + 16
    const second = addedSquare({ mean: 10, count: 1 }, 12);
    expect(second + addedSquare({ mean: 11, count: 2 }, 17)).toBeCloseTo(26, 12);
  });

  it('stays as believed before until something was repeated', () => {
    expect(must(repeatability({ sd: 0.01, worth: 6, squares: 0, count: 0 }))).toBeCloseTo(0.01, 12);
    expect(repeatability({ sd: 0, worth: 6, squares: 0, count: 0 }).ok).toBe(false);
  });
});
