import { definedOnly } from '../../definedOnly.ts';
import { coverage95 } from '../../glaze/statistics/normal.ts';
import { millilitres, type Gravity, type Millilitres } from '../../glaze/units.ts';
import { warmthAt } from '../belief/warmth.ts';
import type { MeasuredGravity } from '../bucket/bucketState.ts';
import type { Move } from './decisionTable.ts';
import type { LearnedLoosening } from '../dose/learnLoosening.ts';
import { nextDose } from '../dose/nextDose.ts';
import { nextLoosening } from '../dose/nextLoosening.ts';
import { litreAmount, pailAmount, type AmountsFound } from './pailAmounts.ts';
import type { Facts } from './facts.ts';
import type { Reason } from './verdict.ts';
import { volumeNow } from '../bucket/volumeNow.ts';

interface MoveAmountsFound extends AmountsFound {
  /** A keeper has to check the bucket before more goes in. */
  checkpoint: boolean;
}

const nothingMore = (reason: Reason): MoveAmountsFound => ({
  amounts: {},
  checkpoint: true,
  reasons: [reason],
});

const dose = ({ state }: Facts, slurry: Gravity, volume: Millilitres | undefined): MoveAmountsFound => {
  const next = nextDose(state, slurry, volume);
  switch (next.kind) {
    case 'checkpoint':
      return nothingMore({ because: 'dose-checkpoint', totalPercent: next.totalPercent });
    case 'no-change':
      return nothingMore({ because: 'dose-no-change' });
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
          ...(next.interval ? [{ because: 'dose-learned' as const, ...next.interval }] : []),
        ],
      };
  }
};

/** What a step of deflocculant takes off the seconds, as a part of them. */
const looseningLearned = ({ value, low, high }: LearnedLoosening): Reason => {
  const takenOff = (lnSeconds: number) => 1 - Math.exp(lnSeconds);
  return { because: 'loosening-learned', less: takenOff(value), least: takenOff(high), most: takenOff(low) };
};

/** Below this, °C, a jar looks thicker than its glaze is at room temperature: by 6 % of its seconds at 16 °C. */
const coldJar = 16;

/** A jar test of deflocculant, and what it comes to in the pail. */
const loosening = (
  { state, now }: Facts,
  slurry: Gravity,
  volume: Millilitres | undefined,
): MoveAmountsFound => {
  const next = nextLoosening(state, slurry, volume);
  if (next.kind === 'checkpoint') return nothingMore({ because: 'loosening-checkpoint', steps: next.steps });
  if (next.kind === 'no-change') return nothingMore({ because: 'loosening-no-change' });
  const { drops, most, dose, learned } = next;
  const temperature = warmthAt(state.belief, now);
  const isCold = temperature !== undefined && temperature < coldJar;
  return {
    amounts: {
      jarDrops: drops,
      ...(isCold && { jarWarm: true as const }),
      ...('ml' in dose ? { deflocculantMl: dose.ml } : { deflocculantMlPerLitre: dose.mlPerLitre }),
    },
    checkpoint: false,
    reasons: [
      {
        because: 'jar-test',
        drops,
        most,
        ...('ml' in dose && { each: millilitres(dose.ml / drops) }),
        ...(isCold && { cold: true as const }),
      },
      ...(learned ? [looseningLearned(learned)] : []),
    ],
  };
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
        ? dose(f, measured.value, volume?.value)
        : amount === 'loosening'
          ? loosening(f, measured.value, volume?.value)
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
