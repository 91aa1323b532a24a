import { describe, expect, it } from 'vitest';
import type { Checked } from '../../../src/glaze/checked.ts';

/** The documented limits of one parameter; the other parameters are in the middle of their ranges. */
export type Limit = readonly [
  what: string,
  formula: (x: number) => Checked<unknown>,
  low: number,
  high: number,
];

export const checkLimits = (limits: readonly Limit[]): void => {
  describe('the range that a formula promises', () => {
    it.each(limits)('%s: answered at both ends, refused just outside', (_what, formula, low, high) => {
      const below = low > 0 ? low * 0.999 : low - Math.max(1e-9, (high - low) * 1e-3);
      expect(formula(low).ok, `at ${low}`).toBe(true);
      expect(formula(high).ok, `at ${high}`).toBe(true);
      expect(formula(below).ok, `at ${below}`).toBe(false);
      expect(formula(high * 1.001).ok, `at ${high * 1.001}`).toBe(false);
    });
  });
};
