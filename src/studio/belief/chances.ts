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
    const { low } = marks(one, at, { low: mark, high: mark });
    sum += one.weight * normalCdf(low);
  }
  return sum;
};

/** How sure one can be that a bucket is right, as its belief stands. */
export const chancesOf = ({ components }: Pick<Belief, 'components'>, windows: Windows): Chances => {
  const [gravity, flow] = [rightGravity(windows), rightFlow(windows)];
  const parts = (at: number, { low, high }: Between, off: Between) => ({
    under: chance(below(components, at, off.low)),
    in: chance(below(components, at, high) - below(components, at, low)),
    over: chance(1 - below(components, at, off.high)),
  });
  const g = windows.gravity ? parts(place.gravity, gravity, windows.gravity) : undefined;
  const z = windows.efflux ? parts(place.flow, flow, logged(windows.efflux)) : undefined;
  let both: number | null = null;
  if (g && z) {
    both = 0;
    for (const one of components) {
      const [first, second] = [marks(one, place.gravity, gravity), marks(one, place.flow, flow)];
      const tied = spreadOf(one, place.gravity, place.flow) / (first.sd * second.sd);
      both += one.weight * bothBetween(first, second, Math.min(1, Math.max(-1, tied)));
    }
  }
  return {
    gravity: g ? { low: g.under, in: g.in, high: g.over } : null,
    flow: z ? { thin: z.under, in: z.in, thick: z.over } : null,
    both: both === null ? null : chance(both),
  };
};
