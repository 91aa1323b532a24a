import { definedOnly } from '../../definedOnly.ts';
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
import { waterGramsPerMl, type Estimate } from '../contents/contents.ts';
import type { Window } from '../settings/bucketSettings.ts';
import type { Amount } from './decisionTable.ts';
import { headroom } from './headroom.ts';
import { safeAmount } from './safeAmount.ts';
import type { Amounts, Reason } from './verdict.ts';

export interface Correction {
  volume: Estimate<Millilitres>;
  from: { value: Gravity; u95: number };
  window: Window<Gravity>;
  particleGravity: Gravity;
}

interface CorrectionAmount<T> {
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
const waterForWindow = (c: Correction): CorrectionAmount<Millilitres> | undefined =>
  correctionAmount(c, waterToAdd(toMiddle(c)), c.window.low, c.window.low - 1, millilitres);

/** Clear water to draw off a bucket whose gravity is below its window. */
const drawOffForWindow = (c: Correction): CorrectionAmount<Millilitres> | undefined =>
  correctionAmount(c, waterToDrawOff(toMiddle(c)), c.window.high, c.window.high - 1, millilitres);

/** Dry batch for a bucket whose gravity is below its window. */
const dryForWindow = (c: Correction): CorrectionAmount<Grams> | undefined => {
  const { window, particleGravity } = c;
  const wanted = powderToAdd({ ...toMiddle(c), particleGravity });
  return correctionAmount(c, wanted, window.high, 1 - window.high / particleGravity, grams);
};

export type WaterOrPowder = Exclude<Amount, 'dose' | 'loosening'>;

export interface AmountsFound {
  amounts: Amounts;
  reasons: Reason[];
}

const none: AmountsFound = { amounts: {}, reasons: [] };

const heldBack = (wanted: number, safe: number): Reason[] =>
  safe < wanted * 0.99 ? [{ because: 'held-back', wanted, safe }] : [];

const water = (c: Correction, pail: Millilitres | undefined, part: number): AmountsFound => {
  const found = waterForWindow(c);
  if (!found) return none;
  const pour = found.safe * part;
  const fits = pail === undefined ? pour : headroom(pail, c.volume.value);
  const reasons = part === 1 ? heldBack(found.wanted, found.safe) : [];
  if (pour <= fits) return { amounts: { waterMl: millilitres(pour) }, reasons };
  return {
    amounts: { waterMl: millilitres(fits), waterMlLeft: millilitres(pour - fits) },
    reasons: [...reasons, { because: 'pail-full', fits: millilitres(fits), wanted: millilitres(pour) }],
  };
};

const dry = (c: Correction, pail: Millilitres | undefined): AmountsFound => {
  const found = dryForWindow(c);
  if (!found) return none;
  // Grains take up the volume of water of the same weight, divided by their gravity.
  const fits =
    pail === undefined ? found.safe : headroom(pail, c.volume.value) * c.particleGravity * waterGramsPerMl;
  if (found.safe <= fits)
    return { amounts: { dryGrams: found.safe }, reasons: heldBack(found.wanted, found.safe) };
  return {
    amounts: fits > 0 ? { dryGrams: grams(fits) } : {},
    reasons: [{ because: 'no-room-for-dry', fits: grams(fits), wanted: found.safe }],
  };
};

/** The amount for this pail to reach mid-window, or as near as is safe and fits. */
export const pailAmount = (
  amount: WaterOrPowder,
  c: Correction,
  pail: Millilitres | undefined,
): AmountsFound => {
  switch (amount) {
    case 'water':
      return water(c, pail, 1);
    case 'half-water':
      return water(c, pail, 0.5);
    case 'draw-off': {
      const found = drawOffForWindow(c);
      return found
        ? { amounts: { drawOffMl: found.safe }, reasons: heldBack(found.wanted, found.safe) }
        : none;
    }
    case 'dry':
      return dry(c, pail);
  }
};

const litre: Estimate<Millilitres> = { value: millilitres(1000), sd: 0 };

/** The amount for each litre, when the pail's volume is unknown. */
export const litreAmount = (amount: WaterOrPowder, unfilled: Omit<Correction, 'volume'>): Amounts => {
  const { waterMl, drawOffMl, dryGrams } = pailAmount(
    amount,
    { ...unfilled, volume: litre },
    undefined,
  ).amounts;
  return definedOnly({ waterMlPerLitre: waterMl, drawOffMlPerLitre: drawOffMl, dryGramsPerLitre: dryGrams });
};
