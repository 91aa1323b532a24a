import { coverage95 } from '../glaze/uncertainty.ts';
import { millilitres, type Millilitres } from '../glaze/units.ts';
import { drawOffForWindow, dryForWindow, waterForWindow, type Correction } from './amounts.ts';
import type { MeasuredGravity } from './bucketState.ts';
import { aged, volumeOf, type Estimate } from './contents.ts';
import type { Amount, Move } from './decisionTable.ts';
import { days, since } from './ids.ts';
import { nextDose } from './nextDose.ts';
import type { Facts } from './rules.ts';
import type { Amounts, Reason } from './verdict.ts';

/** A volume older than this, or after use that nobody logged, is asked for again. */
const volumeShelfLife = days(7);

const litre: Estimate<Millilitres> = { value: millilitres(1000), sd: 0 };

/** What the pail holds now; undefined when nobody has said for too long. */
export const volumeNow = ({
  state,
  now,
}: Pick<Facts, 'state' | 'now'>): Estimate<Millilitres> | undefined => {
  const { contents, volumeAt, foldedTo, settings } = state;
  if (!contents || volumeAt === undefined || since(volumeAt, now) > volumeShelfLife) return undefined;
  return volumeOf(aged(contents, since(foldedTo, now) / days(1)), settings.solids);
};

interface Found {
  amounts: Amounts;
  reasons: Reason[];
  checkpoint: boolean;
}

const heldBack = (wanted: number, safe: number): Reason[] =>
  safe < wanted * 0.99 ? [{ because: 'held-back', wanted, safe }] : [];

const water = (c: Correction, pail: Millilitres | undefined, part: number): Partial<Found> => {
  const found = waterForWindow(c);
  if (!found) return {};
  const pour = found.safe * part;
  const fits = pail === undefined ? pour : Math.max(0, pail - c.volume.value);
  const reasons: Reason[] = part === 1 ? heldBack(found.wanted, found.safe) : [];
  if (pour <= fits) return { amounts: { waterMl: millilitres(pour) }, reasons };
  return {
    amounts: { waterMl: millilitres(fits), waterMlLeft: millilitres(pour - fits) },
    reasons: [...reasons, { because: 'pail-full', fits: millilitres(fits), wanted: millilitres(pour) }],
  };
};

const inThePail = (amount: Amount, c: Correction, f: Facts): Partial<Found> => {
  switch (amount) {
    case 'water':
      return water(c, f.state.settings.pail, 1);
    case 'half-water':
      return water(c, f.state.settings.pail, 0.5);
    case 'draw-off': {
      const found = drawOffForWindow(c);
      return found ? { amounts: { drawOffMl: found.safe }, reasons: heldBack(found.wanted, found.safe) } : {};
    }
    case 'dry': {
      const found = dryForWindow(c);
      return found ? { amounts: { dryGrams: found.safe } } : {};
    }
    case 'dose':
      return {};
  }
};

const perLitre = (amount: Amount, c: Correction): Amounts => {
  const one = { ...c, volume: litre };
  const water = waterForWindow(one)?.safe;
  const drawn = drawOffForWindow(one)?.safe;
  const dry = dryForWindow(one)?.safe;
  switch (amount) {
    case 'water':
      return water === undefined ? {} : { waterMlPerLitre: water };
    case 'half-water':
      return water === undefined ? {} : { waterMlPerLitre: millilitres(water / 2) };
    case 'draw-off':
      return drawn === undefined ? {} : { drawOffMlPerLitre: drawn };
    case 'dry':
      return dry === undefined ? {} : { dryGramsPerLitre: dry };
    case 'dose':
      return {};
  }
};

const dose = (f: Facts, measured: MeasuredGravity, volume: Estimate<Millilitres> | undefined): Found => {
  const next = nextDose(f.state, measured.value, volume?.value);
  if (next.kind === 'checkpoint')
    return {
      amounts: {},
      checkpoint: true,
      reasons: [{ because: 'dose-checkpoint', totalPercent: next.totalPercent }],
    };
  if (next.kind === 'per-litre')
    return { amounts: { doseMlPerLitre: next.dose }, checkpoint: false, reasons: [] };
  return {
    amounts: { doseMl: next.dose },
    checkpoint: false,
    reasons: [
      { because: 'dose', grams: next.heptahydrate, percent: next.percent, totalPercent: next.totalPercent },
    ],
  };
};

/** The amounts that a move asks for, in this pail if what it holds is known, and per litre. */
export const moveAmounts = (move: Move, f: Facts, measured: MeasuredGravity): Found => {
  const { gravity: window, solids } = f.state.settings;
  if (move.amounts.length === 0 || !window) return { amounts: {}, reasons: [], checkpoint: false };
  const volume = volumeNow(f);
  const all: Found = {
    amounts: {},
    checkpoint: false,
    reasons: volume
      ? [{ because: 'volume', value: volume.value, u95: coverage95 * volume.sd }]
      : [{ because: 'volume-old', ...(f.state.volumeAt !== undefined && { at: f.state.volumeAt }) }],
  };
  for (const amount of move.amounts) {
    const c: Correction = { volume: volume ?? litre, from: measured, window, solids };
    const found =
      amount === 'dose'
        ? dose(f, measured, volume)
        : volume
          ? inThePail(amount, c, f)
          : { amounts: perLitre(amount, c) };
    all.amounts = { ...all.amounts, ...found.amounts };
    all.reasons = [...all.reasons, ...(found.reasons ?? [])];
    all.checkpoint ||= found.checkpoint ?? false;
  }
  return all;
};
