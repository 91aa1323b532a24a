import { describe, expect, it } from 'vitest';
import { dipFor, fitSqrt, predictThickness } from '../../../../src/glaze/statistics/sqrtFit.ts';
import { millimetres, seconds } from '../../../../src/glaze/units.ts';
import { must } from '../../../helpers/glaze/must.ts';

// Anscombe, Graphs in Statistical Analysis, Am. Statistician 27 (1973) 17, data set 1; x is √dip
const anscombe = [
  [10, 8.04],
  [8, 6.95],
  [13, 7.58],
  [9, 8.81],
  [11, 8.33],
  [14, 9.96],
  [6, 7.24],
  [4, 4.26],
  [12, 10.84],
  [7, 4.82],
  [5, 5.68],
].map(([root = 0, thickness = 0]) => ({ dip: seconds(root ** 2), thickness: millimetres(thickness) }));

describe('the line through test tiles', () => {
  it('is the one that Anscombe published for his first data set', () => {
    const fit = must(fitSqrt(anscombe));
    // y = 3.0 + 0.5x, mean x 9.0, Σ(x − x̄)² 110.0, residual sum of squares 13.75 on 9 degrees of freedom
    expect(fit.intercept).toBeCloseTo(3.0, 3);
    expect(fit.slope).toBeCloseTo(0.5, 3);
    expect(fit.meanRoot).toBeCloseTo(9, 10);
    expect(fit.spread).toBeCloseTo(110, 10);
    expect(Math.abs(fit.residual ** 2 * 9 - 13.75)).toBeLessThan(0.02);
  });

  it('has the 90 % prediction interval worked out by hand at the mean', () => {
    const fit = must(fitSqrt(anscombe));
    const { expected, low, high } = must(predictThickness({ fit, dip: seconds(81) }));
    // t(0.95, 9) = 1.833 (NIST table), s = √(13.7627/9) = 1.2366, √(1 + 1/11) = 1.04447
    expect(expected).toBeCloseTo(7.501, 3);
    expect((high - low) / 2).toBeCloseTo(1.833 * 1.2366 * 1.04447, 2);
  });

  it('has a wider interval far from the mean, as worked out by hand', () => {
    const fit = must(fitSqrt(anscombe));
    const { low, high } = must(predictThickness({ fit, dip: seconds(20 ** 2) }));
    // √(1 + 1/11 + (20 − 9)²/110) = √2.190909
    expect((high - low) / 2).toBeCloseTo(1.833 * 1.2366 * Math.sqrt(2.190909), 2);
  });

  it('is known no better than a thickness is read', () => {
    const line = [1, 4, 9].map((dip) => ({
      dip: seconds(dip),
      thickness: millimetres(0.2 + 0.3 * Math.sqrt(dip)),
    }));
    const { low, high } = must(
      predictThickness({ fit: must(fitSqrt(line)), dip: seconds(4), readTo: millimetres(0.1) }),
    );
    // JCGM 100:2008, 4.3.7: 0.1/√12 = 0.028868 mm; × 1.645 × √(1 + 1/3)
    expect((high - low) / 2).toBeCloseTo(1.645 * 0.028868 * 1.154701, 4);
  });

  it('turns round into the dip time', () => {
    const fit = must(fitSqrt(anscombe));
    const { expected } = must(predictThickness({ fit, dip: seconds(49) }));
    expect(must(dipFor({ fit, thickness: expected }))).toBeCloseTo(49, 9);
  });

  it('asks for three tiles, not all of one dip time', () => {
    const tile = { dip: seconds(4), thickness: millimetres(1) };
    expect(fitSqrt([tile, { dip: seconds(9), thickness: millimetres(1.4) }])).toMatchObject({
      ok: false,
      outOfRange: { quantity: 'test tiles', value: 2 },
    });
    const near = { dip: seconds(4.099), thickness: millimetres(1) };
    expect(fitSqrt([tile, tile, near]).ok).toBe(false);
    expect(fitSqrt([tile, tile, { ...near, dip: seconds(4.1001) }]).ok).toBe(true);
    expect(fitSqrt([tile, tile, tile])).toMatchObject({
      ok: false,
      outOfRange: { quantity: 'longest less shortest dip', value: 0 },
    });
  });

  it('does not name a dip time when more time made no thicker coat', () => {
    const flat = [1, 4, 9].map((dip) => ({ dip: seconds(dip), thickness: millimetres(1) }));
    expect(dipFor({ fit: must(fitSqrt(flat)), thickness: millimetres(1) }).ok).toBe(false);
  });
});
