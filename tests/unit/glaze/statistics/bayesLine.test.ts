import { describe, expect, it } from 'vitest';
import { bayesLine, chanceAbove } from '../../../../src/glaze/statistics/bayesLine.ts';
import { must } from '../../../helpers/glaze/must.ts';

describe('a line believed and read', () => {
  it('with hardly any belief is the least-squares line of Anscombe’s first data set', () => {
    // Anscombe, Am. Statistician 27 (1973) 17: y = 3.0 + 0.5x; standard errors 1.125 and 0.118, of s = 1.237
    const data = [
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
    ];
    const [{ belief, weight } = { belief: { mean: [], covariance: [] }, weight: 0 }] = must(
      bayesLine({
        prior: {
          mean: [0, 0],
          covariance: [
            [1e6, 0],
            [0, 1e6],
          ],
        },
        points: data.map(([x = 0, y = 0]) => ({ at: [1, x], seen: y, noise: 1 })),
        scale: 1.237,
        scaleSpread: 0,
      }),
    );
    expect(weight).toBe(1);
    expect(belief.mean[0]).toBeCloseTo(3.0, 2);
    expect(belief.mean[1]).toBeCloseTo(0.5, 3);
    expect(Math.sqrt(belief.covariance[0]?.[0] ?? 0)).toBeCloseTo(1.125, 2);
    expect(Math.sqrt(belief.covariance[1]?.[1] ?? 0)).toBeCloseTo(0.118, 3);
  });

  it('moves belief by the moments of the cut-off normal when only a floor is known', () => {
    // θ ~ N(0, 1) known to lie above 0 but for next to no noise: mean √(2/π) = 0.79788, variance 1 − 2/π = 0.36338
    // (Johnson, Kotz & Balakrishnan, half-normal distribution; from memory)
    const [only] = must(
      bayesLine({
        prior: { mean: [0], covariance: [[1]] },
        points: [{ at: [1], seen: 0, above: true, noise: 1e-6 }],
        scale: 1,
        scaleSpread: 0,
      }),
    );
    expect(only?.belief.mean[0]).toBeCloseTo(0.79788, 4);
    expect(only?.belief.covariance[0]?.[0]).toBeCloseTo(0.36338, 4);
  });

  it('leans to the scale of noise that makes the readings likely', () => {
    const fitted = (spread: number) =>
      must(
        bayesLine({
          prior: { mean: [0], covariance: [[100]] },
          points: [-spread, spread, -spread, spread].map((seen) => ({ at: [1], seen, noise: 1 })),
          scale: 0.1,
          scaleSpread: 0.8,
        }),
      );
    const likeliest = (mixture: ReturnType<typeof fitted>) =>
      mixture.reduce((best, { weight }, i) => (weight > (mixture[best]?.weight ?? 0) ? i : best), 0);
    expect(likeliest(fitted(0.03))).toBeLessThan(3);
    expect(likeliest(fitted(0.4))).toBeGreaterThan(3);
    expect(fitted(0.1).reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it('says how likely the line is above a mark', () => {
    // Φ(1.96) = 0.975
    expect(chanceAbove([{ weight: 1, belief: { mean: [1.96], covariance: [[1]] } }], [1], 0)).toBeCloseTo(
      0.975,
      4,
    );
    expect(chanceAbove([{ weight: 1, belief: { mean: [1], covariance: [[0]] } }], [1], 0)).toBe(1);
  });

  it('is refused without points, or without noise', () => {
    const prior = { mean: [0], covariance: [[1]] };
    const points = [{ at: [1], seen: 0, noise: 1 }];
    expect(bayesLine({ prior, points: [], scale: 1, scaleSpread: 0 }).ok).toBe(false);
    expect(bayesLine({ prior, points, scale: 0, scaleSpread: 0 }).ok).toBe(false);
    expect(bayesLine({ prior, points, scale: 1, scaleSpread: 4 }).ok).toBe(false);
  });
});
