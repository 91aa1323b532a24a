import { truncatedNormal } from '../../glaze/statistics/truncatedNormal.ts';
import type { Window } from '../settings/bucketSettings.ts';
import { type Component, counted, type Glance, normalized, place } from './mixture.ts';
import { anything, blindPress, noise, slip } from './priors.ts';
import { nothingHolds, type Windows } from './startBelief.ts';

/** A number that somebody read. */
export interface Observed {
  at: typeof place.gravity | typeof place.volume | typeof place.flow;
  value: number;
  sd: number;
  /** Place of how far its instrument is off; absent for the one that the window was set with. */
  bias?: number;
}

/** How an account varies along with one of its places, with an instrument's bias or without. */
const alongOf = ({ mean, covariance }: Component, at: number, bias: number | undefined): number[] => {
  const size = mean.length;
  return mean.map(
    (_, i) =>
      (covariance[i * size + at] ?? 0) + (bias === undefined ? 0 : (covariance[i * size + bias] ?? 0)),
  );
};

/** An account corrected by what was seen: so much above what it expected, of a spread that shrinks by a part. */
const corrected = (
  { mean, covariance, counts }: Component,
  { along, difference, variance, shrink }: { along: number[]; difference: number; variance: number; shrink: number },
): Omit<Component, 'weight'> => {
  const size = mean.length;
  const next = [...covariance];
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++) {
      const at = i * size + j;
      const less = (next[at] ?? 0) - (shrink * (along[i] ?? 0) * (along[j] ?? 0)) / variance;
      // What decimals lose must not leave less than nothing.
      next[at] = i === j ? Math.max(0, less) : less;
    }
  return {
    mean: mean.map((value, i) => value + ((along[i] ?? 0) * difference) / variance),
    covariance: next,
    counts,
  };
};

/** How likely any value is when the hand slipped; a volume is told too roughly for that. */
const slipDensity = (at: Observed['at']): number =>
  at === place.gravity ? slip.gravity : at === place.flow ? slip.flow : 0.5;

/** Every account twice: with the reading taken as true, and with it for a slip. */
export const withReading = (components: readonly Component[], { at, value, sd, bias }: Observed): Component[] => {
  const next: Component[] = [];
  for (const one of components) {
    const along = alongOf(one, at, bias);
    const expected = (one.mean[at] ?? 0) + (bias === undefined ? 0 : (one.mean[bias] ?? 0));
    const variance = (along[at] ?? 0) + (bias === undefined ? 0 : (along[bias] ?? 0)) + sd * sd;
    const difference = value - expected;
    const likely = Math.exp((-difference * difference) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
    next.push(
      {
        ...corrected(one, { along, difference, variance, shrink: 1 }),
        weight: one.weight * (1 - slip.chance) * likely,
      },
      { ...one, weight: one.weight * slip.chance * slipDensity(at) },
    );
  }
  return normalized(next);
};

/** Once with each reading: perhaps it is another bucket altogether. */
export const withAnything = (components: readonly Component[], windows: Windows): Component[] => [
  ...components.map((one) => ({ ...one, weight: one.weight * (1 - anything) })),
  { ...nothingHolds(components, windows), weight: anything },
];

/** Every account with what was seen only to lie between two marks; those that rule it out are left as unlikely. */
const withSeenBetween = (components: readonly Component[], { low, high }: Window<number>): Component[] =>
  components.flatMap((one) => {
    const along = alongOf(one, place.flow, undefined);
    const variance = (along[place.flow] ?? 0) + noise.glance ** 2;
    const sd = Math.sqrt(variance);
    const expected = one.mean[place.flow] ?? 0;
    const seen = truncatedNormal({ low: (low - expected) / sd, high: (high - expected) / sd });
    if (!seen.ok) return [];
    const { chance, mean, variance: left } = seen.value;
    return [
      {
        ...corrected(one, { along, difference: sd * mean, variance, shrink: 1 - left }),
        weight: one.weight * chance,
      },
    ];
  });

/** Every account with one more look, blind or not; how many are blind is learned. */
const counting = (components: readonly Component[], blind: 0 | 1): Component[] =>
  components.map((one) => {
    const counts = [...one.counts];
    const presses = blindPress.blind + (counts[counted.blind] ?? 0);
    const share = presses / (blindPress.looks + (counts[counted.looks] ?? 0));
    counts[counted.blind] = (counts[counted.blind] ?? 0) + blind;
    counts[counted.looks] = (counts[counted.looks] ?? 0) + 1;
    return { ...one, weight: one.weight * (blind ? share : 1 - share), counts };
  });

/** How likely one of three answers is when the look was a slip. */
const anyAnswer = 1 / 3;

/** A look at how it runs, against the window: nobody is taken at their word who may have pressed without looking. */
export const withGlance = (
  components: readonly Component[],
  look: Glance,
  { low, high }: Window<number>,
): Component[] => {
  const marks = {
    thin: { low: -Infinity, high: Math.log(low) },
    right: { low: Math.log(low), high: Math.log(high) },
    thick: { low: Math.log(high), high: Infinity },
  }[look];
  const looked = counting(components, 0);
  const seen = withSeenBetween(looked, marks);
  const slipped = looked.map((one) => ({ ...one, weight: one.weight * slip.chance * anyAnswer }));
  const blind = look === 'right' ? counting(components, 1) : [];
  return normalized([
    ...seen.map((one) => ({ ...one, weight: one.weight * (1 - slip.chance) })),
    ...slipped,
    ...blind,
  ]);
};
