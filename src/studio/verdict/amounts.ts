import type { Checked } from '../../glaze/checked.ts';
import { powderToAdd, waterToAdd, waterToDrawOff } from '../../glaze/slurry/massBalance.ts';
import { coverage95 } from '../../glaze/statistics/normal.ts';
import {
  grams,
  gravity,
  millilitres,
  type Grams,
  type Gravity,
  type Millilitres,
} from '../../glaze/units.ts';
import type { Window } from '../settings/bucketSettings.ts';
import type { Estimate } from '../contents/contents.ts';
import { safeAmount } from './safeAmount.ts';

export interface Correction {
  volume: Estimate<Millilitres>;
  from: { value: Gravity; u95: number };
  window: Window<Gravity>;
  particleGravity: Gravity;
}

export interface CorrectionAmount<T> {
  /** The amount to mid-window, if everything were known exactly. */
  wanted: T;
  /** At most `wanted`; reduced so that the chance of passing the far edge of the window is at most 5 %. */
  safe: T;
}

export const middle = ({ low, high }: Window<Gravity>): Gravity => gravity((low + high) / 2);

const toMiddle = ({ volume, from, window }: Correction) => ({
  volume: volume.value,
  from: from.value,
  to: middle(window),
});

/** `perAmount`: gravity·ml that one unit of it uses up at the far edge of the window. */
const correctionAmount = <T extends number>(
  { volume, from }: Correction,
  wanted: Checked<T>,
  farEdge: number,
  perAmount: number,
  unit: (value: number) => T,
): CorrectionAmount<T> | undefined => {
  if (!wanted.ok) return undefined;
  const distance = { value: Math.abs(farEdge - from.value), sd: from.u95 / coverage95 };
  return { wanted: wanted.value, safe: unit(safeAmount(wanted.value, volume, distance, perAmount)) };
};

/** Water for a bucket whose gravity is above its window. */
export const waterForWindow = (c: Correction): CorrectionAmount<Millilitres> | undefined =>
  correctionAmount(c, waterToAdd(toMiddle(c)), c.window.low, c.window.low - 1, millilitres);

/** Clear water to draw off a bucket whose gravity is below its window. */
export const drawOffForWindow = (c: Correction): CorrectionAmount<Millilitres> | undefined =>
  correctionAmount(c, waterToDrawOff(toMiddle(c)), c.window.high, c.window.high - 1, millilitres);

/** Dry batch for a bucket whose gravity is below its window. */
export const dryForWindow = (c: Correction): CorrectionAmount<Grams> | undefined => {
  const { window, particleGravity } = c;
  const wanted = powderToAdd({ ...toMiddle(c), particleGravity });
  return correctionAmount(c, wanted, window.high, 1 - window.high / particleGravity, grams);
};
