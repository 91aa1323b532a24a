import type { BucketCaution, BucketSettings } from '../settings/bucketSettings.ts';
import type { BucketState } from './bucketState.ts';
import { normalizedName } from '../../text/normalizedName.ts';

type Joined = Pick<BucketSettings, 'glaze'> & Partial<Pick<BucketSettings, 'cautions'>>;

/** A hazard in either bucket is a hazard in both. Children may use both only if they may use each. */
const cautionsOfBoth = (one: readonly BucketCaution[], other: readonly BucketCaution[]): BucketCaution[] =>
  [...new Set([...one, ...other])].filter(
    (caution) => caution !== 'children' || (one.includes(caution) && other.includes(caution)),
  );

const isSameSet = (one: readonly BucketCaution[], other: readonly BucketCaution[]): boolean =>
  one.length === other.length && one.every((caution) => other.includes(caution));

/**
 * The settings that change when a keeper says that two buckets hold the same glaze: a common name, and the cautions
 * of both.
 */
export const joinGlaze = (
  one: BucketState,
  other: BucketState,
): { one: Joined; other: Joined | undefined } => {
  const glaze = other.settings.glaze ?? other.settings.name;
  const cautions = cautionsOfBoth(one.settings.cautions, other.settings.cautions);
  const changed = ({ settings }: BucketState) => (isSameSet(settings.cautions, cautions) ? {} : { cautions });
  const otherChanged = changed(other);
  const isNamed = other.settings.glaze !== undefined;
  return {
    one: { glaze, ...changed(one) },
    other: isNamed && otherChanged.cautions === undefined ? undefined : { glaze, ...otherChanged },
  };
};

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
