import { coverage95 } from '../../glaze/statistics/normal.ts';
import { gravity, type Gravity } from '../../glaze/units.ts';
import { agedView } from '../belief/aged.ts';
import { chancesOf, insOf, type Chances } from '../belief/chances.ts';
import { place, type Component } from '../belief/mixture.ts';
import { visitAt, type Visit } from '../belief/visit.ts';
import { wouldBeRight } from '../belief/wouldBeRight.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import type { Instant } from '../ids.ts';
import type { Asked, FlowBand, GravityBand } from './verdict.ts';

/** What a bucket's belief comes to now, and what was read of it in this visit. */
export interface Sureness {
  chances: Chances;
  visit: Visit | undefined;
  /** The likeliest account's gravity, which amounts go by. */
  likely: { value: Gravity; u95: number };
  /** Whether both would be right with this chance, if it were looked at or timed now, and were right. */
  wouldBeRight(by: 'look' | 'seconds', sure: number): boolean;
}

/** What a stirred bucket's belief asks for. */
export type ByChance =
  | { kind: 'use' }
  /** What is wanted, the best first. */
  | { kind: 'ask'; asks: [Asked, ...Asked[]] }
  /** The cell of the grid that says what to do. */
  | { kind: 'move'; gravity: GravityBand; flow: FlowBand }
  /** Many readings, and they do not settle it. */
  | { kind: 'unsettled' };

export interface Chooser {
  /** How likely it must be to be right, 0 to 1. */
  sure: number;
  /** How it flows by finger, where no window of seconds is set. */
  byFinger: FlowBand;
  /** Whether anybody may dip a finger in. */
  mayLook: boolean;
  /** A single reading is less exact than the window is wide. */
  isCoarse: boolean;
  /** The last weighing does not fit what was known, and no second one agrees with it yet. */
  isFlagged: boolean;
  /** It ran thick since it was last stirred. */
  isThickSince: boolean;
  /** No long stir of now, but one lately: what runs thick gets deflocculant at once. */
  isStirredOutBefore: boolean;
}

/** How sure one must be of gravity before a dose: a dose would hide water that nobody logged. */
export const sureBeforeDose = 0.85;
/**
 * How sure one must be to change a bucket, after any number of readings. For water or powder the whole 95 % interval
 * must be outside the window, with half of 5 % on its side; a dose needs less.
 */
export const sureToChange = { gravity: 0.975, flow: 0.95 };
/**
 * A bucket just outside its window is still right by its margin, and a dose would cost its minutes for nothing. The
 * bar is as low as that for use after many readings; at half as many the next visits pay for it (tried in the bench
 * of pots).
 */
export const rightUndosed = 0.7;
/** A clogged cup runs slow: before what can't be taken out goes in unexpectedly, so many readings say that it is thick. */
const thickReadings = 2;
/** So far beyond `sure` that it is not worth a reading. */
const plain = 0.97;

/** How sure to be once weight and flow were read in this visit: at first, after five readings, and at last. */
export const read = { enough: 0.9, afterFive: 0.7, lastly: 0.5 };

/**
 * At a window's edge more readings tell little and cost minutes. So after a few of them the likelier step is taken,
 * and the answer says its chance. Tried in the bench of pots: a higher bar costs minutes and saves hardly a dip.
 */
const enoughAfter = (readings: number, sure: number): number =>
  Math.min(sure, readings < 5 ? read.enough : readings === 5 ? read.afterFive : read.lastly);

const likeliest = ([first, ...others]: readonly Component[]): Sureness['likely'] => {
  const one = others.reduce((best, other) => (other.weight > (best?.weight ?? 0) ? other : best), first);
  const value = gravity(one?.mean[place.gravity] ?? 1);
  return { value, u95: coverage95 * Math.sqrt(one?.covariance[0] ?? 0) };
};

/** How sure one is of a bucket now. It ages a copy of the belief. */
export const surenessOf = ({ belief, settings }: BucketState, now: Instant): Sureness => {
  const { components } = agedView(belief, now, settings);
  const ins = insOf(components, settings);
  return {
    chances: chancesOf({ components }, settings, ins),
    visit: visitAt(belief, now),
    likely: likeliest(components),
    wouldBeRight: (by, sure) => wouldBeRight({ components, ins }, by, settings, sure),
  };
};

/** Amounts go by the last reading, unless the belief takes that for a slip. */
export const gravityForAmounts = <T extends { value: Gravity; u95: number }>(
  measured: T,
  { likely }: Pick<Sureness, 'likely'>,
): T => (Math.abs(measured.value - likely.value) <= measured.u95 / 2 ? measured : { ...measured, ...likely });

const ask = (...asks: [Asked, ...Asked[]]): ByChance => ({ kind: 'ask', asks });

/** What is read next: the cheapest that may settle it, and else what is in doubt. */
const readNext = (
  { chances: { gravity, flow }, visit, wouldBeRight: would }: Sureness,
  { sure, mayLook }: Chooser,
): ByChance => {
  const settles = (by: 'look' | 'seconds') => would(by, sure);
  const isLookedAt = visit?.look !== undefined || visit?.timed === true;
  if (mayLook && !isLookedAt && settles('look')) return ask('look');
  if (!visit?.timed && settles('seconds')) return ask('seconds');
  if (!visit?.weighed) return ask('weight', 'seconds');
  const [heavy, runny] = [(gravity?.in ?? 1) < plain, (flow?.in ?? 1) < plain];
  if (heavy === runny) return ask('weight', 'seconds');
  return heavy ? ask('weight') : ask('seconds');
};

/** After so many readings in one visit something is odd: a keeper looks. */
export const mostReadings = 8;

/** Where no seconds say how it should flow, a finger does. */
const chooseByFinger = ({ chances: { gravity }, visit }: Sureness, { sure, byFinger }: Chooser): ByChance => {
  if (!gravity) return { kind: 'unsettled' };
  const { gravity: off } = sureToChange;
  const band = gravity.high >= off ? 'high' : gravity.low >= off ? 'low' : 'in';
  if (band === 'in' && gravity.in >= sure && (byFinger === 'in' || byFinger === 'unknown'))
    return byFinger === 'in' ? { kind: 'use' } : { kind: 'move', gravity: 'in', flow: 'unknown' };
  if (!visit?.weighed) return ask('weight');
  if (band !== 'in' || gravity.in >= sureBeforeDose) return { kind: 'move', gravity: band, flow: byFinger };
  return visit.readings >= mostReadings ? { kind: 'unsettled' } : ask('weight');
};

/**
 * What a stirred bucket asks for, by how likely it is right: use it when that is likely enough, change it only when it is
 * likely enough that it is off and it was weighed in this visit, and else read what is in doubt.
 */
export const chooseByChance = (sureness: Sureness, chooser: Chooser): ByChance => {
  const { chances, visit } = sureness;
  const { gravity, flow, both } = chances;
  if (!gravity || !flow || both === null) return chooseByFinger(sureness, chooser);
  const isSeen = visit !== undefined && (visit.timed || visit.look !== undefined);
  const enough =
    visit?.weighed && isSeen && !chooser.isCoarse
      ? enoughAfter(chooser.isFlagged ? 1 : visit.readings, chooser.sure)
      : chooser.sure;
  if (both >= enough || (enough === read.lastly && gravity.in >= enough && flow.in >= enough))
    return { kind: 'use' };
  if (!visit?.weighed) return readNext(sureness, chooser);
  const byFlow = flow.thin >= sureToChange.flow ? 'thin' : flow.thick >= sureToChange.flow ? 'thick' : 'in';
  if (gravity.high >= sureToChange.gravity)
    return { kind: 'move', gravity: 'high', flow: isSeen ? byFlow : 'unknown' };
  // It may be a gel that was thinned with water: how it flows says what to do.
  if (gravity.low >= sureToChange.gravity && isSeen) return { kind: 'move', gravity: 'low', flow: byFlow };
  if (byFlow !== 'in' && visit.timed && gravity.in >= sureBeforeDose && flow.in <= rightUndosed) {
    const mayBeClogged =
      (visit.dosed === true || chooser.isStirredOutBefore) && visit.readings < thickReadings;
    // A gel thins when it is stirred: what ran thick before the last stir is timed again.
    if (byFlow === 'thick' && (mayBeClogged || !chooser.isThickSince)) return ask('seconds');
    return { kind: 'move', gravity: 'in', flow: byFlow };
  }
  return visit.readings >= mostReadings ? { kind: 'unsettled' } : readNext(sureness, chooser);
};
