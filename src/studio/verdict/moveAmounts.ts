import { definedOnly } from '../../definedOnly.ts';
import { coverage95 } from '../../glaze/statistics/normal.ts';
import type { Millilitres } from '../../glaze/units.ts';
import type { MeasuredGravity } from '../bucket/bucketState.ts';
import type { Estimate } from '../contents/contents.ts';
import type { Move } from './decisionTable.ts';
import { nextDose, doseStepOfDry } from '../dose/nextDose.ts';
import { litreAmount, pailAmount, type AmountsFound } from './pailAmounts.ts';
import type { Facts } from './facts.ts';
import type { Reason } from './verdict.ts';
import { volumeNow } from '../bucket/volumeNow.ts';

const doseStepPercent = 100 * doseStepOfDry;

interface MoveAmountsFound extends AmountsFound {
  /** A keeper has to check the bucket before more goes in. */
  checkpoint: boolean;
}

const dose = (
  f: Facts,
  measured: MeasuredGravity,
  volume: Estimate<Millilitres> | undefined,
): MoveAmountsFound => {
  const next = nextDose(f.state, measured.value, volume?.value);
  switch (next.kind) {
    case 'checkpoint':
      return {
        amounts: {},
        checkpoint: true,
        reasons: [{ because: 'dose-checkpoint', totalPercent: next.totalPercent }],
      };
    case 'no-change':
      return { amounts: {}, checkpoint: true, reasons: [{ because: 'dose-no-change' }] };
    case 'per-litre':
      return { amounts: { doseMlPerLitre: next.dose }, checkpoint: false, reasons: [] };
    case 'dose':
      return {
        amounts: { doseMl: next.dose },
        checkpoint: false,
        reasons: [
          {
            because: 'dose',
            grams: next.heptahydrate,
            percent: next.percent,
            totalPercent: next.totalPercent + next.percent,
          },
          ...(next.interval
            ? [{ because: 'dose-learned' as const, rungs: next.percent / doseStepPercent, ...next.interval }]
            : []),
        ],
      };
  }
};

/** The volume that an answer's amounts are for. */
export const volumeReason = ({ state, now }: Pick<Facts, 'state' | 'now'>): Reason => {
  const volume = volumeNow(state, now);
  return volume
    ? { because: 'volume', value: volume.value, u95: coverage95 * volume.sd }
    : { because: 'volume-old', ...definedOnly({ at: state.volumeAt }) };
};

/** The amounts for a move: in this pail, if its volume is known, and per litre. */
export const moveAmounts = (move: Move, f: Facts, measured: MeasuredGravity): MoveAmountsFound => {
  const { gravity: window, solids: particleGravity, pail } = f.state.settings;
  if (move.amounts.length === 0 || !window) return { amounts: {}, reasons: [], checkpoint: false };
  const volume = volumeNow(f.state, f.now);
  const all: MoveAmountsFound = { amounts: {}, checkpoint: false, reasons: [volumeReason(f)] };
  const unfilled = { from: measured, window, particleGravity };
  for (const amount of move.amounts) {
    const found: Partial<MoveAmountsFound> =
      amount === 'dose'
        ? dose(f, measured, volume)
        : volume
          ? pailAmount(amount, { ...unfilled, volume }, pail)
          : { amounts: litreAmount(amount, unfilled) };
    all.amounts = { ...all.amounts, ...found.amounts };
    const told = all.reasons.map(({ because }) => because);
    all.reasons = [
      ...all.reasons,
      ...(found.reasons ?? []).filter(({ because }) => because !== 'held-back' || !told.includes(because)),
    ];
    all.checkpoint ||= found.checkpoint ?? false;
  }
  return all;
};
