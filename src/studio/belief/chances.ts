import { addedByTie, type Between } from '../../glaze/statistics/bivariateNormal.ts';
import { normalCdf } from '../../glaze/statistics/normal.ts';
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

type Place = typeof place.gravity | typeof place.flow;

/** Decimals may add up to a hair beyond 1. */
const chance = (sum: number): number => Math.min(1, Math.max(0, sum));

const spreadOf = ({ covariance, mean }: Component, i: number, j: number): number =>
  covariance[i * mean.length + j] ?? 0;

const sdOf = (one: Component, at: Place): number => Math.sqrt(Math.max(1e-12, spreadOf(one, at, at)));

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
  for (const one of components) sum += one.weight * normalCdf((mark - (one.mean[at] ?? 0)) / sdOf(one, at));
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

const inside = ({ low, high }: Between): number => normalCdf(high) - normalCdf(low);

/** How likely gravity is right, flow is, and both are; 1 where there is no window. */
const chancesIn = (
  components: readonly Component[],
  { gravity, flow }: Record<'gravity' | 'flow', Between>,
): { gravity: number; flow: number; both: number } => {
  const sum = { gravity: 0, flow: 0, both: 0 };
  for (const one of components) {
    const { weight, mean } = one;
    const [g = 0, , z = 0] = mean;
    const [sdG, sdZ] = [sdOf(one, place.gravity), sdOf(one, place.flow)];
    const first = { low: (gravity.low - g) / sdG, high: (gravity.high - g) / sdG };
    const second = { low: (flow.low - z) / sdZ, high: (flow.high - z) / sdZ };
    const [inFirst, inSecond] = [inside(first), inside(second)];
    const tied = Math.min(1, Math.max(-1, spreadOf(one, place.gravity, place.flow) / (sdG * sdZ)));
    sum.gravity += weight * inFirst;
    sum.flow += weight * inSecond;
    sum.both += weight * chance(inFirst * inSecond + addedByTie(first, second, tied));
  }
  return sum;
};

/** How likely a bucket is right in both, as its belief stands; null without both windows. */
export const chanceOfBoth = ({ components }: Pick<Belief, 'components'>, windows: Windows): number | null =>
  windows.gravity && windows.efflux ? chance(chancesIn(components, bounds(windows).right).both) : null;

/** How sure one can be that a bucket is right, as its belief stands. */
export const chancesOf = (belief: Pick<Belief, 'components'>, windows: Windows): Chances => {
  const off = chancesOff(belief, windows);
  const { gravity, flow, both } = chancesIn(belief.components, bounds(windows).right);
  return {
    gravity: off.gravity && { ...off.gravity, in: chance(gravity) },
    flow: off.flow && { ...off.flow, in: chance(flow) },
    both: off.gravity && off.flow ? chance(both) : null,
  };
};
