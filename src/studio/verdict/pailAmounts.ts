import { definedOnly } from '../../definedOnly.ts';
import { grams, millilitres, type Millilitres } from '../../glaze/units.ts';
import { drawOffForWindow, dryForWindow, waterForWindow, type Correction } from './amounts.ts';
import { waterGramsPerMl, type Estimate } from '../contents/contents.ts';
import type { Amount } from './decisionTable.ts';
import { headroom } from './headroom.ts';
import type { Amounts, Reason } from './verdict.ts';

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
