import { addedByTie, type Between } from '../../glaze/statistics/bivariateNormal.ts';
import { quickCdf } from '../../glaze/statistics/quickNormal.ts';
import { type Belief, type Component, place } from './mixture.ts';
import { margin } from './priors.ts';
import type { Windows } from './startBelief.ts';

/**
 * The chances that a bucket is right, and that it is off to either side. Right includes a margin beyond the window.
 * Off begins at the window's edge, because a correction does no harm there. So a value in the margin counts as both.
 * Null without a window.
 */
export interface Chances {
  gravity: { low: number; in: number; high: number } | null;
  flow: { thin: number; in: number; thick: number } | null;
  /** The chance that both are right. */
  both: number | null;
}

/** The error that a sum of chances may have for each account. */
export const exact = 1e-12;

type Place = typeof place.gravity | typeof place.flow;

/** Decimals may add up to a hair beyond 1. */
const chance = (sum: number): number => Math.min(1, Math.max(0, sum));

const sdOf = (variance: number): number => Math.sqrt(Math.max(1e-12, variance));

const everywhere: Between = { low: -Infinity, high: Infinity };

/** A window of gravity, and one of seconds as ln seconds; everywhere without a window. */
export type Marks = Record<'gravity' | 'flow', Between>;

const marksOf = ({ gravity, efflux }: Windows): Marks => ({
  gravity: gravity ?? everywhere,
  flow: efflux ? { low: Math.log(efflux.low), high: Math.log(efflux.high) } : everywhere,
});

/** Where a bucket is right: its windows, with their margin. */
export const rightIn = (windows: Windows): Marks => {
  const { gravity, flow } = marksOf(windows);
  const wider = ({ low, high }: Between, by: number) => ({ low: low - by, high: high + by });
  return { gravity: wider(gravity, margin.gravity), flow: wider(flow, margin.flow) };
};

/** How likely a place is below a window, and above it. */
const beside = (components: readonly Component[], at: Place, { low, high }: Between) => {
  let under = 0;
  let within = 0;
  for (const { weight, mean, covariance } of components) {
    const sd = sdOf(covariance[at * (mean.length + 1)] ?? 0);
    const value = mean[at] ?? 0;
    under += weight * quickCdf((low - value) / sd);
    within += weight * quickCdf((high - value) / sd);
  }
  return { under: chance(under), over: chance(1 - within) };
};

/** Only how likely it is to be off, to either side: far cheaper than all of it. Null without a window. */
export const chancesOff = (
  { components }: Pick<Belief, 'components'>,
  windows: Windows,
): { gravity: { low: number; high: number } | null; flow: { thin: number; thick: number } | null } => {
  const marks = marksOf(windows);
  const gravity = windows.gravity && beside(components, place.gravity, marks.gravity);
  const flow = windows.efflux && beside(components, place.flow, marks.flow);
  return {
    gravity: gravity ? { low: gravity.under, high: gravity.over } : null,
    flow: flow ? { thin: flow.under, thick: flow.over } : null,
  };
};

/** How likely gravity is so near a reading. */
export const chanceNear = (
  { components }: Pick<Belief, 'components'>,
  { value, within }: { value: number; within: number },
): number => {
  let sum = 0;
  for (const { weight, mean, covariance } of components) {
    const sd = sdOf(covariance[0] ?? 0);
    const off = value - (mean[place.gravity] ?? 0);
    sum += weight * (quickCdf((off + within) / sd) - quickCdf((off - within) / sd));
  }
  return chance(sum);
};

/** Gravity and flow as one account has them: means, variances, and how they vary together. */
export interface Pair {
  gravity: number;
  flow: number;
  ofGravity: number;
  ofFlow: number;
  together: number;
}

export interface In {
  gravity: number;
  flow: number;
  both: number;
}

export const pairOf = ({ mean, covariance }: Component): Pair => {
  const size = mean.length;
  return {
    gravity: mean[place.gravity] ?? 0,
    flow: mean[place.flow] ?? 0,
    ofGravity: covariance[0] ?? 0,
    ofFlow: covariance[place.flow * (size + 1)] ?? 0,
    together: covariance[place.flow] ?? 0,
  };
};

const inside = ({ low, high }: Between): number => quickCdf(high) - quickCdf(low);

const inDeviations = ({ low, high }: Between, mean: number, sd: number): Between => ({
  low: (low - mean) / sd,
  high: (high - mean) / sd,
});

/** How likely a pair is right, each by itself. */
export const eachIn = ({ gravity, flow, ofGravity, ofFlow }: Pair, right: Marks): Omit<In, 'both'> => ({
  gravity: inside(inDeviations(right.gravity, gravity, sdOf(ofGravity))),
  flow: inside(inDeviations(right.flow, flow, sdOf(ofFlow))),
});

/** How likely a pair is right in both, with an error of at most `within`. */
export const bothIn = (pair: Pair, each: Omit<In, 'both'>, right: Marks, within: number): number => {
  const sdG = sdOf(pair.ofGravity);
  const sdF = sdOf(pair.ofFlow);
  const tied = Math.min(1, Math.max(-1, pair.together / (sdG * sdF)));
  const first = inDeviations(right.gravity, pair.gravity, sdG);
  const second = inDeviations(right.flow, pair.flow, sdF);
  return chance(each.gravity * each.flow + addedByTie(first, second, tied, within));
};

/** How likely each account makes it that a bucket is right. */
export const insOf = (components: readonly Component[], windows: Windows): In[] => {
  const right = rightIn(windows);
  return components.map((one) => {
    const pair = pairOf(one);
    const each = eachIn(pair, right);
    const both = bothIn(pair, each, right, exact / one.weight);
    return { gravity: each.gravity, flow: each.flow, both };
  });
};

/** How sure one can be that a bucket is right, as its belief stands; `ins` when each account's part is known already. */
export const chancesOf = (
  { components }: Pick<Belief, 'components'>,
  windows: Windows,
  ins = insOf(components, windows),
): Chances => {
  const off = chancesOff({ components }, windows);
  const sum = { gravity: 0, flow: 0, both: 0 };
  ins.forEach(({ gravity, flow, both }, i) => {
    const weight = components[i]?.weight ?? 0;
    sum.gravity += weight * gravity;
    sum.flow += weight * flow;
    sum.both += weight * both;
  });
  return {
    gravity: off.gravity && { low: off.gravity.low, in: chance(sum.gravity), high: off.gravity.high },
    flow: off.flow && { thin: off.flow.thin, in: chance(sum.flow), thick: off.flow.thick },
    both: off.gravity && off.flow ? chance(sum.both) : null,
  };
};
