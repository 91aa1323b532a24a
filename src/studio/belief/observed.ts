import { truncatedNormal } from '../../glaze/statistics/truncatedNormal.ts';
import type { Window } from '../settings/bucketSettings.ts';
import { type Component, counted, dust, place } from './mixture.ts';
import { anything, blindPress, noise, slip } from './priors.ts';
import { nothingHolds, type Windows } from './startBelief.ts';
import type { Glance } from './visit.ts';

export interface Observed {
  at: typeof place.gravity | typeof place.volume | typeof place.flow;
  value: number;
  sd: number;
  /** Place of how far its instrument is off; absent for the one that the window was set with. */
  bias?: number;
}

/** What an account expected of a sight, how it varies along with it, and how likely it makes what was seen. */
export interface Met {
  one: Component;
  along: number[];
  difference: number;
  variance: number;
  /** The part of the spread along it that goes: all but the sight's own noise, or less. */
  shrink: number;
  weight: number;
}

/** How an account varies along with one of its places, with an instrument's bias or without. */
const alongOf = ({ mean, covariance }: Component, at: number, bias: number | undefined): number[] => {
  const size = mean.length;
  const along = mean.slice();
  for (let i = 0; i < size; i++) {
    const row = i * size;
    along[i] = (covariance[row + at] ?? 0) + (bias === undefined ? 0 : (covariance[row + bias] ?? 0));
  }
  return along;
};

const corrected = (
  { one, along, difference, variance, shrink }: Met,
  weight: number,
  counts: number[],
): Component => {
  const size = along.length;
  const mean = one.mean.slice();
  const covariance = one.covariance.slice();
  for (let i = 0; i < size; i++) {
    const gain = (along[i] ?? 0) / variance;
    if (gain === 0) continue;
    mean[i] = (mean[i] ?? 0) + gain * difference;
    for (let j = 0; j < size; j++) {
      const at = i * size + j;
      const less = (covariance[at] ?? 0) - shrink * gain * (along[j] ?? 0);
      // Rounding must not make a variance negative.
      covariance[at] = i === j ? Math.max(0, less) : less;
    }
  }
  return { weight, mean, covariance, counts };
};

/** An account that stays as it was, and how likely it is once something was seen. */
export interface Unmoved {
  one: Component;
  weight: number;
}

/** Every account becomes two: one takes what was seen as true, the other as a slip, or as a look that was none. */
export interface Split {
  met: Met[];
  unmoved: Unmoved[];
}

/** Accounts of a split that are less likely than this are dropped. */
export const leastLikely = ({ met, unmoved }: Split): number => {
  let whole = 0;
  for (const { weight } of met) whole += weight;
  for (const { weight } of unmoved) whole += weight;
  return dust * whole;
};

const asCounted = ({ counts }: Component): number[] => counts;

/**
 * What is left of a split, as accounts whose weights sum to 1: all of them alike when none is likely at all. What they
 * counted may be more now, of those that took what was seen as true, and of the others.
 */
const keptOf = (
  split: Split,
  countedIn: Record<keyof Split, (one: Component) => number[]> = { met: asCounted, unmoved: asCounted },
): Component[] => {
  const least = leastLikely(split);
  let whole = 0;
  let count = 0;
  const weigh = ({ weight }: { weight: number }) => {
    if (!(weight >= least)) return;
    whole += weight;
    count++;
  };
  split.met.forEach(weigh);
  split.unmoved.forEach(weigh);
  const part = (weight: number) => (whole > 0 ? weight / whole : 1 / count);
  const kept: Component[] = [];
  for (const seen of split.met)
    if (seen.weight >= least) kept.push(corrected(seen, part(seen.weight), countedIn.met(seen.one)));
  for (const { one, weight } of split.unmoved)
    if (weight >= least) kept.push({ ...one, weight: part(weight), counts: countedIn.unmoved(one) });
  return kept;
};

/** How likely any value is when the hand slipped; a volume is told too roughly for that. */
const slipDensity = (at: Observed['at']): number =>
  at === place.gravity ? slip.gravity : at === place.flow ? slip.flow : slip.volume;

/** What a reading makes of every account: true, or a slip. */
export const splitByReading = (
  components: readonly Component[],
  { at, value, sd, bias }: Observed,
): Split => {
  const split: Split = { met: [], unmoved: [] };
  for (const one of components) {
    const along = alongOf(one, at, bias);
    const expected = (one.mean[at] ?? 0) + (bias === undefined ? 0 : (one.mean[bias] ?? 0));
    const variance = (along[at] ?? 0) + (bias === undefined ? 0 : (along[bias] ?? 0)) + sd * sd;
    const difference = value - expected;
    const density = Math.exp((-difference * difference) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
    const weight = one.weight * (1 - slip.chance) * density;
    split.met.push({ one, along, difference, variance, shrink: 1, weight });
    split.unmoved.push({ one, weight: one.weight * slip.chance * slipDensity(at) });
  }
  return split;
};

export const withReading = (components: readonly Component[], seen: Observed): Component[] =>
  keptOf(splitByReading(components, seen));

/** With each reading, a small chance that the bucket holds something else altogether. */
export const withAnything = (components: readonly Component[], windows: Windows): Component[] => [
  ...components.map((one) => ({ ...one, weight: one.weight * (1 - anything) })),
  { ...nothingHolds(components, windows), weight: anything },
];

/** What will not run at all is at least so many times as slow as the window's far edge (common practice). */
const stuckBeyond = 1.5;

/** How likely one of three answers is when the look was a slip. */
const anyAnswer = 1 / 3;

/** How likely a look is blind, as an account has counted them. */
const blindShare = ({ counts }: Component): number =>
  (blindPress.blind + (counts[counted.blind] ?? 0)) / (blindPress.looks + (counts[counted.looks] ?? 0));

/** What an account makes of a value that lay between two marks; undefined when it rules that out. */
const metBetween = (
  one: Component,
  { low, high }: Window<number>,
  slowed: { by: number; sd: number },
): Met | undefined => {
  const along = alongOf(one, place.flow, undefined);
  const variance = (along[place.flow] ?? 0) + noise.glance ** 2 + slowed.sd ** 2;
  const sd = Math.sqrt(variance);
  const expected = (one.mean[place.flow] ?? 0) + slowed.by;
  const seen = truncatedNormal({ low: (low - expected) / sd, high: (high - expected) / sd });
  if (!seen.ok) return undefined;
  const { chance, mean, variance: left } = seen.value;
  const weight = one.weight * (1 - blindShare(one)) * (1 - slip.chance) * chance;
  return { one, along, difference: sd * mean, variance, shrink: 1 - left, weight };
};

/**
 * What a look at how it runs, against the window, makes of every account. It counts for less than it says, as somebody
 * may press without looking.
 */
export const splitByGlance = (
  components: readonly Component[],
  look: Glance | 'stuck',
  { low, high }: Window<number>,
  slowed = { by: 0, sd: 0 },
): Split => {
  const marks = {
    thin: { low: -Infinity, high: Math.log(low) },
    right: { low: Math.log(low), high: Math.log(high) },
    thick: { low: Math.log(high), high: Infinity },
    stuck: { low: Math.log(stuckBeyond * high), high: Infinity },
  }[look];
  const met: Met[] = [];
  const unmoved: Unmoved[] = [];
  for (const one of components) {
    const seen = metBetween(one, marks, slowed);
    if (seen) met.push(seen);
    const share = blindShare(one);
    // Nobody presses “thin” blindly, but a finger may slip; a “right” that is none is blind, whatever it came from.
    const other = look === 'right' ? share : (1 - share) * slip.chance * anyAnswer;
    unmoved.push({ one, weight: one.weight * other });
  }
  return { met, unmoved };
};

/** What an account has counted with one more look, blind or not: how many are blind is learned. */
const withLook = ({ counts }: Component, blind: 0 | 1): number[] => {
  const next = [...counts];
  next[counted.blind] = (next[counted.blind] ?? 0) + blind;
  next[counted.looks] = (next[counted.looks] ?? 0) + 1;
  return next;
};

export const withGlance = (
  components: readonly Component[],
  look: Glance | 'stuck',
  window: Window<number>,
  slowed?: { by: number; sd: number },
): Component[] =>
  keptOf(splitByGlance(components, look, window, slowed), {
    met: (one) => withLook(one, 0),
    unmoved: (one) => withLook(one, look === 'right' ? 1 : 0),
  });
