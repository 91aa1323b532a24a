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

/** A chance is reckoned to so little of an error for each account. */
const exact = 1e-12;

type Place = typeof place.gravity | typeof place.flow;

/** Decimals may add up to a hair beyond 1. */
const chance = (sum: number): number => Math.min(1, Math.max(0, sum));

const sdOf = (variance: number): number => Math.sqrt(Math.max(1e-12, variance));

const everywhere: Between = { low: -Infinity, high: Infinity };

/** A window in the unit of its place in a component, and the range that is right, margin included. */
const bounds = ({
  gravity,
  efflux,
}: Windows): Record<'off' | 'right', Record<'gravity' | 'flow', Between>> => {
  const flow = efflux && { low: Math.log(efflux.low), high: Math.log(efflux.high) };
  const wider = (window: Between | undefined, by: number) =>
    window ? { low: window.low - by, high: window.high + by } : everywhere;
  return {
    off: { gravity: gravity ?? everywhere, flow: flow ?? everywhere },
    right: { gravity: wider(gravity, margin.gravity), flow: wider(flow, margin.flow) },
  };
};

const below = (components: readonly Component[], at: Place, mark: number): number => {
  let sum = 0;
  for (const { weight, mean, covariance } of components) {
    const sd = sdOf(covariance[at * (mean.length + 1)] ?? 0);
    sum += weight * quickCdf((mark - (mean[at] ?? 0)) / sd);
  }
  return sum;
};

/** Only how likely it is to be off, to either side: far cheaper than all of it. Null without a window. */
export const chancesOff = (
  { components }: Pick<Belief, 'components'>,
  windows: Windows,
): { gravity: { low: number; high: number } | null; flow: { thin: number; thick: number } | null } => {
  const { gravity, flow } = bounds(windows).off;
  const under = (at: Place, { low }: Between) => chance(below(components, at, low));
  const over = (at: Place, { high }: Between) => chance(1 - below(components, at, high));
  return {
    gravity: windows.gravity
      ? { low: under(place.gravity, gravity), high: over(place.gravity, gravity) }
      : null,
    flow: windows.efflux ? { thin: under(place.flow, flow), thick: over(place.flow, flow) } : null,
  };
};

/** How likely gravity is so near a reading. */
export const chanceNear = (
  { components }: Pick<Belief, 'components'>,
  { value, within }: { value: number; within: number },
): number =>
  chance(below(components, place.gravity, value + within) - below(components, place.gravity, value - within));

/** Gravity and flow as one account has them: means, variances, and how they vary together. */
export interface Pair {
  gravity: number;
  flow: number;
  ofGravity: number;
  ofFlow: number;
  together: number;
}

/** How likely gravity is right, flow is, and both are. */
export interface In {
  gravity: number;
  flow: number;
  both: number;
}

/** Where a bucket is right: its windows, with their margin; everywhere without a window. */
export type Right = Record<'gravity' | 'flow', Between>;
export const rightIn = (windows: Windows): Right => bounds(windows).right;

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
export const eachIn = ({ gravity, flow, ofGravity, ofFlow }: Pair, right: Right): Omit<In, 'both'> => ({
  gravity: inside(inDeviations(right.gravity, gravity, sdOf(ofGravity))),
  flow: inside(inDeviations(right.flow, flow, sdOf(ofFlow))),
});

/** How likely a pair is right in both, `within` so much. */
export const bothIn = (pair: Pair, each: Omit<In, 'both'>, right: Right, within: number): number => {
  const sdG = sdOf(pair.ofGravity);
  const sdF = sdOf(pair.ofFlow);
  const tied = Math.min(1, Math.max(-1, pair.together / (sdG * sdF)));
  const first = inDeviations(right.gravity, pair.gravity, sdG);
  const second = inDeviations(right.flow, pair.flow, sdF);
  return chance(each.gravity * each.flow + addedByTie(first, second, tied, within));
};

/** How likely each account makes it that a bucket is right. */
export const insOf = (components: readonly Component[], windows: Windows): In[] => {
  const { right } = bounds(windows);
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
    gravity: off.gravity && { ...off.gravity, in: chance(sum.gravity) },
    flow: off.flow && { ...off.flow, in: chance(sum.flow) },
    both: off.gravity && off.flow ? chance(sum.both) : null,
  };
};
