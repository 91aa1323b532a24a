import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../../../src/glaze/statistics/normal.ts';
import { studentQuantile } from '../../../../src/glaze/statistics/studentT.ts';
import { must } from '../../../helpers/glaze/must.ts';

describe('the quantile of Student’s t', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, critical values (from memory)
  it.each([
    [1, 3.078, 6.314, 12.706, 31.821, 63.657],
    [2, 1.886, 2.92, 4.303, 6.965, 9.925],
    [3, 1.638, 2.353, 3.182, 4.541, 5.841],
    [5, 1.476, 2.015, 2.571, 3.365, 4.032],
    [10, 1.372, 1.812, 2.228, 2.764, 3.169],
    [20, 1.325, 1.725, 2.086, 2.528, 2.845],
    [30, 1.31, 1.697, 2.042, 2.457, 2.75],
    [100, 1.29, 1.66, 1.984, 2.364, 2.626],
  ])('agrees with the printed table at %i degrees of freedom', (degrees, ...row) => {
    [0.9, 0.95, 0.975, 0.99, 0.995].forEach((p, i) => {
      const off = must(studentQuantile({ p, degrees })) - (row[i] ?? Number.NaN);
      expect(Math.abs(off), `p ${p}`).toBeLessThanOrEqual(0.0005001);
    });
  });

  it('has closed forms at one and two degrees of freedom', () => {
    // Cauchy: tan(π(p − ½)); two degrees: (2p − 1)/√(2p(1 − p)). Abramowitz & Stegun 26.7
    for (const p of [0.001, 0.2, 0.5, 0.77, 0.9999]) {
      const cauchy = Math.tan(Math.PI * (p - 0.5));
      const two = (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
      expect(must(studentQuantile({ p, degrees: 1 }))).toBeCloseTo(cauchy, 8);
      expect(must(studentQuantile({ p, degrees: 2 }))).toBeCloseTo(two, 8);
    }
  });

  it('comes to the normal quantile with many tiles', () => {
    const normal = must(normalQuantile(0.95));
    // first term of the Cornish-Fisher expansion, Abramowitz & Stegun 26.7.5
    const near = normal + (normal ** 3 + normal) / (4 * 10_000);
    expect(must(studentQuantile({ p: 0.95, degrees: 10_000 }))).toBeCloseTo(near, 7);
  });

  it('refuses no degrees of freedom and a certainty', () => {
    expect(studentQuantile({ p: 0.95, degrees: 0 }).ok).toBe(false);
    expect(studentQuantile({ p: 1, degrees: 5 }).ok).toBe(false);
  });
});
