import { bothBetween, type Between } from '../../glaze/statistics/bivariateNormal.ts';
import { normalCdf } from '../../glaze/statistics/normal.ts';
import { type Belief, type Component, place } from './mixture.ts';
import { margin } from './priors.ts';
import type { Windows } from './startBelief.ts';

/**
 * Chances that a bucket is right, a margin beyond the window counted in, and that it is off to either side, from the
 * window's edge on: there a correction does no harm. What is in the margin is both. Null without a window.
 */
export interface Chances {
  gravity: { low: number; in: number; high: number } | null;
  flow: { thin: number; in: number; thick: number } | null;
  /** That both are in. */
  both: number | null;
}

/** Decimals may add up to a hair beyond 1. */
const chance = (sum: number): number => Math.min(1, Math.max(0, sum));

const spreadOf = ({ covariance, mean }: Component, i: number, j: number): number =>
  covariance[i * mean.length + j] ?? 0;

const marks = (one: Component, at: number, { low, high }: Between): Between & { sd: number } => {
  const sd = Math.sqrt(Math.max(1e-12, spreadOf(one, at, at)));
  const mean = one.mean[at] ?? 0;
  return { low: (low - mean) / sd, high: (high - mean) / sd, sd };
};

/** Where a value is right, its margin counted in; everywhere when there is no window. */
const rightGravity = ({ gravity }: Windows): Between =>
  gravity
    ? { low: gravity.low - margin.gravity, high: gravity.high + margin.gravity }
    : { low: -Infinity, high: Infinity };

const rightFlow = ({ efflux }: Windows): Between =>
  efflux
    ? { low: Math.log(efflux.low) - margin.flow, high: Math.log(efflux.high) + margin.flow }
    : { low: -Infinity, high: Infinity };

const logged = ({ low, high }: Between): Between => ({ low: Math.log(low), high: Math.log(high) });

const below = (components: readonly Component[], at: number, mark: number): number => {
  let sum = 0;
  for (const one of components) {
    const sd = Math.sqrt(Math.max(1e-12, spreadOf(one, at, at)));
    sum += one.weight * normalCdf((mark - (one.mean[at] ?? 0)) / sd);
  }
  return sum;
};

/** Only how likely it is to be off, to either side: far cheaper than all of it. Null without a window. */
export const chancesOff = (
  { components }: Pick<Belief, 'components'>,
  { gravity, efflux }: Windows,
): { gravity: { low: number; high: number } | null; flow: { thin: number; thick: number } | null } => {
  const off = (at: number, { low, high }: Between) => ({
    under: chance(below(components, at, low)),
    over: chance(1 - below(components, at, high)),
  });
  const g = gravity && off(place.gravity, gravity);
  const z = efflux && off(place.flow, logged(efflux));
  return {
    gravity: g ? { low: g.under, high: g.over } : null,
    flow: z ? { thin: z.under, thick: z.over } : null,
  };
};

/** How sure one can be that a bucket is right, as its belief stands. */
export const chancesOf = ({ components }: Pick<Belief, 'components'>, windows: Windows): Chances => {
  const [gravity, flow] = [rightGravity(windows), rightFlow(windows)];
  const within = (at: number, { low, high }: Between) =>
    chance(below(components, at, high) - below(components, at, low));
  const off = chancesOff({ components }, windows);
  let both: number | null = null;
  if (off.gravity && off.flow) {
    both = 0;
    for (const one of components) {
      const [first, second] = [marks(one, place.gravity, gravity), marks(one, place.flow, flow)];
      const tied = spreadOf(one, place.gravity, place.flow) / (first.sd * second.sd);
      both += one.weight * bothBetween(first, second, Math.min(1, Math.max(-1, tied)));
    }
  }
  return {
    gravity: off.gravity && { ...off.gravity, in: within(place.gravity, gravity) },
    flow: off.flow && { ...off.flow, in: within(place.flow, flow) },
    both: both === null ? null : chance(both),
  };
};
