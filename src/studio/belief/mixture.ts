import type { Instant, Seq } from '../ids.ts';
import type { Repeats } from './repeats.ts';
import type { Visit } from './visit.ts';
import type { Warmth } from './warmth.ts';

/**
 * One account of what may be in a bucket: how likely it is, what it says and how the parts of it vary together. In
 * gravity, ln litres and ln seconds everything that is measured is linear.
 */
export interface Component {
  weight: number;
  mean: number[];
  /** Row by row. */
  covariance: number[];
  /** What this account takes to have happened: see `counted`. */
  counts: number[];
}

/** Places in a component's mean; how far each other instrument is off comes after them. */
export const place = {
  gravity: 0,
  /** ln litres. */
  volume: 1,
  /** ln seconds, as after a usual stir. */
  flow: 2,
} as const;

export const ownPlaces = 3;

/** Places in a component's counts: what nobody logged, by its kind; blind presses, of so many looks. */
export const counted = { water: 0, powder: 1, waterOut: 2, salt: 3, blind: 4, looks: 5 } as const;
export const nothingCounted = [0, 0, 0, 0, 0, 0];

/** What buckets have shown of a studio's people, cups and scales. */
export interface Shown {
  days: number;
  /** As in a component. */
  counts: number[];
  /** By kind, as in a belief. */
  repeats: Record<string, Repeats>;
}

/** What is believed of a bucket, as of the last entry that bears on its contents. */
export interface Belief {
  at: Instant;
  /** Days that it has been watched: what was counted came in as many. */
  days: number;
  /** Instruments other than the one that its window was set with, each with its place. */
  instruments: string[];
  components: Component[];
  /** The kind of cup that its window was set with, once it was seen. */
  cupKind?: string;
  /** How warm it was when somebody last said. */
  warmth?: Warmth;
  /** The last reading that the logbook did not expect and that all else known bears out: it counts before a second agrees. */
  borneOut?: Seq;
  /** When a long stir loosened it, until it has gelled again. */
  loosened?: Instant;
  /** How well readings repeat, by kind: `weight`, and each flow cup; absent until some were repeated. */
  repeats?: Record<string, Repeats>;
  /** What the studio's other buckets lent it: days, counts and repeats hold it too; absent until they have shown something. */
  others?: Shown;
  /** What was read since somebody came and since the last change; absent after a change. */
  visit?: Visit;
}

/**
 * Accounts less likely than this are dropped while an entry is worked on. It is small, so that order hardly matters.
 */
export const dust = 1e-6;

/** Scales the weights of one's own components so that they sum to 1 again; when all are 0, every account is equally likely. */
export const weighAnew = (own: Component[]): Component[] => {
  let whole = 0;
  for (const { weight } of own) whole += weight;
  if (!(whole > 0)) {
    for (const one of own) one.weight = 1 / own.length;
    return own;
  }
  const kept = own.filter(({ weight }) => weight >= dust * whole);
  let left = 0;
  for (const { weight } of kept) left += weight;
  for (const one of kept) one.weight /= left;
  return kept;
};

/**
 * What `map` makes of components, in the same kind of array every time. Once it is compiled, Node's own `map` makes another
 * kind, and all that was compiled for the first kind is then compiled again.
 */
export const made = (components: readonly Component[], make: (one: Component) => Component): Component[] => {
  const next: Component[] = [];
  for (const one of components) next.push(make(one));
  return next;
};

export const normalized = (components: readonly Component[]): Component[] =>
  weighAnew(made(components, (one) => ({ ...one })));

export const zeros = (length: number): number[] => {
  const all: number[] = [];
  for (let i = 0; i < length; i++) all.push(0);
  return all;
};

/** What components say and count on the average, and their weights' sum. */
export const average = (components: readonly Component[]): Omit<Component, 'covariance'> => {
  const mean = zeros(components[0]?.mean.length ?? ownPlaces);
  const counts = nothingCounted.slice();
  let weight = 0;
  for (const one of components) weight += one.weight;
  for (const one of components) {
    const part = one.weight / weight;
    for (let i = 0; i < mean.length; i++) mean[i] = (mean[i] ?? 0) + part * (one.mean[i] ?? 0);
    for (let i = 0; i < counts.length; i++) counts[i] = (counts[i] ?? 0) + part * (one.counts[i] ?? 0);
  }
  return { weight, mean, counts };
};

/** Adds a component's share of the variances about the average of all, for the places from one on. */
export const addSpread = (
  covariance: number[],
  one: Component,
  { mean, part, from }: { mean: readonly number[]; part: number; from: number },
): void => {
  const size = mean.length;
  for (let i = from; i < size; i++) {
    const off = (one.mean[i] ?? 0) - (mean[i] ?? 0);
    for (let j = from; j < size; j++) {
      const at = i * size + j;
      const other = (one.mean[j] ?? 0) - (mean[j] ?? 0);
      covariance[at] = (covariance[at] ?? 0) + part * ((one.covariance[at] ?? 0) + off * other);
    }
  }
};

/** A component of one's own, to be changed in place; its counts are still shared. */
export const copied = ({ weight, mean, covariance, counts }: Component): Component => ({
  weight,
  mean: mean.slice(),
  covariance: covariance.slice(),
  counts,
});

/** As `copied`, of gravity, volume and flow alone. */
export const onlyContents = ({ weight, mean, covariance, counts }: Component): Component => {
  const size = mean.length;
  const at = (i: number) => covariance[i] ?? 0;
  return {
    weight,
    mean: [mean[0] ?? 0, mean[1] ?? 0, mean[2] ?? 0],
    // prettier-ignore
    covariance: [
      at(0), at(1), at(2),
      at(size), at(size + 1), at(size + 2),
      at(2 * size), at(2 * size + 1), at(2 * size + 2),
    ],
    counts,
  };
};

/** One component with the same mean and spread as all of them together. That they were apart is lost. */
export const together = (components: readonly Component[]): Component => {
  const { weight, mean, counts } = average(components);
  const covariance = zeros(mean.length * mean.length);
  for (const one of components) addSpread(covariance, one, { mean, part: one.weight / weight, from: 0 });
  return { weight, mean, covariance, counts };
};
