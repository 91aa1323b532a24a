import type { Gravity } from '../../glaze/units.ts';
import type { Window } from '../settings/bucketSettings.ts';
import type { GravityBand } from './verdict.ts';

/** Tolerance: far below any reading, far above rounding errors. */
const roundingTolerance = 1e-9;

/**
 * Low or high only when the whole 95 % interval is outside; `edge` when the value is outside and the interval is not.
 */
export const gravityBand = (
  { value, u95 }: { value: Gravity; u95: number },
  { low, high }: Window<Gravity>,
): { band: GravityBand; edge: boolean } => {
  if (value + u95 < low - roundingTolerance) return { band: 'low', edge: false };
  if (value - u95 > high + roundingTolerance) return { band: 'high', edge: false };
  return { band: 'in', edge: value < low - roundingTolerance || value > high + roundingTolerance };
};

/**
 * Whether an interval is too wide to tell in from out. Compared as it is shown: to a hundredth, or a thousandth when
 * it is that exact.
 */
export const widerThanWindow = (u95: number, { low, high }: Window<Gravity>): boolean => {
  const isExact = u95 < 0.0095;
  const width = high - low + roundingTolerance;
  // Most are so narrow that rounding cannot matter, and rounding is slow.
  if (2 * u95 + (isExact ? 0.001 : 0.01) < width) return false;
  return 2 * Number(u95.toFixed(isExact ? 3 : 2)) > width;
};
