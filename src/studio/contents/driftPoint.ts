import { coverage95 } from '../../glaze/statistics/normal.ts';
import type { Gravity } from '../../glaze/units.ts';
import type { BucketSettings } from '../settings/bucketSettings.ts';
import type { Contents } from './contents.ts';
import type { Instant } from '../ids.ts';

/** Grams of water to one of powder at a believed reading, less what logged additions changed. */
export interface DriftPoint {
  at: Instant;
  value: number;
  sd: number;
}

/** Grams of water to one of powder: evaporation changes it evenly, use does not change it. */
export const waterToPowder = ({ water, solids: dryWeight }: Contents): number =>
  dryWeight > 0 ? water / dryWeight : 0;

/** The derivative of that ratio by gravity: r = (s − γ)/(s(γ − 1)), so dr/dγ = −(s − 1)/(s(γ − 1)²). */
export const perGravity = (slurry: Gravity, particleGravity: Gravity): number =>
  -(particleGravity - 1) / (particleGravity * (slurry - 1) ** 2);

/** Below this gravity it is almost water, and the ratio is meaningless. */
const thinnestGravity = 1.01;

/** A reading as a point of the drift line; undefined when it is almost water. */
export const driftPoint = (
  { at, value, u95 }: { at: Instant; value: Gravity; u95: number },
  {
    carried,
    settings: { solids: particleGravity },
  }: { carried: number; settings: Pick<BucketSettings, 'solids'> },
): DriftPoint | undefined =>
  value < thinnestGravity
    ? undefined
    : {
        at,
        value: (particleGravity - value) / (particleGravity * (value - 1)) - carried,
        sd: Math.abs(perGravity(value, particleGravity)) * (u95 / coverage95),
      };
