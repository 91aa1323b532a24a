import type { BucketState } from './bucketState.ts';
import { normalizedName } from '../normalizedName.ts';

/**
 * Whether a keeper has said that two buckets hold one glaze: they carry its name in common, and nothing foreign and no
 * fresh batch went into either since. A common name makes it the same in both directions, and for all that carry it.
 */
export const isSameGlaze = (one: BucketState, other: BucketState): boolean =>
  one.apart === undefined &&
  other.apart === undefined &&
  one.settings.glaze !== undefined &&
  other.settings.glaze !== undefined &&
  normalizedName(one.settings.glaze) === normalizedName(other.settings.glaze);
