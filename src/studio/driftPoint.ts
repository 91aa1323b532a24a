import { coverage95 } from '../glaze/uncertainty.ts';
import type { Gravity } from '../glaze/units.ts';
import type { BucketState, Contents, DriftPoint, MeasuredGravity } from './bucketState.ts';

/** Grams of water to one of powder: what dries out changes it evenly, what is used up not at all. */
export const waterToPowder = ({ water, solids }: Contents): number => (solids > 0 ? water / solids : 0);

/** How that changes with gravity: r = (s − γ)/(s(γ − 1)), so dr/dγ = −(s − 1)/(s(γ − 1)²). */
export const perGravity = (slurry: Gravity, solids: Gravity): number =>
  -(solids - 1) / (solids * (slurry - 1) ** 2);

/** Thinner than this it is water, of which no ratio can be told. */
const thinnest = 1.01;

/** A reading as a point of a slow drift; undefined of what is next to water. */
export const driftPoint = (
  { at, value, u95 }: MeasuredGravity,
  { carried, settings: { solids } }: Pick<BucketState, 'carried' | 'settings'>,
): DriftPoint | undefined =>
  value < thinnest
    ? undefined
    : {
        at,
        value: (solids - value) / (solids * (value - 1)) - carried,
        sd: Math.abs(perGravity(value, solids)) * (u95 / coverage95),
      };
