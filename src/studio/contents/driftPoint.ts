import { coverage95 } from '../../glaze/statistics/normal.ts';
import type { Gravity } from '../../glaze/units.ts';
import type { BucketSettings } from '../settings/bucketSettings.ts';
import type { Contents } from './contents.ts';
import type { Instant } from '../ids.ts';

/** Grams of water to one of powder by a believed reading, less what logged additions changed that by. */
export interface DriftPoint {
  at: Instant;
  value: number;
  sd: number;
}

/** Grams of water to one of powder: what dries out changes it evenly, what is used up not at all. */
export const waterToPowder = ({ water, solids: dryWeight }: Contents): number =>
  dryWeight > 0 ? water / dryWeight : 0;

/** How that changes with gravity: r = (s − γ)/(s(γ − 1)), so dr/dγ = −(s − 1)/(s(γ − 1)²). */
export const perGravity = (slurry: Gravity, particleGravity: Gravity): number =>
  -(particleGravity - 1) / (particleGravity * (slurry - 1) ** 2);

/** Thinner than this it is water, of which no ratio can be told. */
const thinnest = 1.01;

/** A reading as a point of a slow drift; undefined of what is next to water. */
export const driftPoint = (
  { at, value, u95 }: { at: Instant; value: Gravity; u95: number },
  {
    carried,
    settings: { solids: particleGravity },
  }: { carried: number; settings: Pick<BucketSettings, 'solids'> },
): DriftPoint | undefined =>
  value < thinnest
    ? undefined
    : {
        at,
        value: (particleGravity - value) / (particleGravity * (value - 1)) - carried,
        sd: Math.abs(perGravity(value, particleGravity)) * (u95 / coverage95),
      };
