import type { BucketState } from './bucketState.ts';
import { normalizedName } from '../../text/normalizedName.ts';

/**
 * Whether two buckets hold the same glaze, as a keeper said: they share its name, and no other glaze and no fresh
 * batch went into either since. It works in both directions, and for every bucket with that name.
 */
export const isSameGlaze = (one: BucketState, other: BucketState): boolean =>
  one.apart === undefined &&
  other.apart === undefined &&
  one.settings.glaze !== undefined &&
  other.settings.glaze !== undefined &&
  normalizedName(one.settings.glaze) === normalizedName(other.settings.glaze);
