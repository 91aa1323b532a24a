import type { BucketCaution, BucketSettings } from '../settings/bucketSettings.ts';
import type { BucketState } from './bucketState.ts';

type Joined = Pick<BucketSettings, 'glaze'> & Partial<Pick<BucketSettings, 'cautions'>>;

/** What is a hazard in one is a hazard in both; children may use what they may use of both. */
const shared = (one: readonly BucketCaution[], other: readonly BucketCaution[]): BucketCaution[] =>
  [...new Set([...one, ...other])].filter(
    (caution) => caution !== 'children' || (one.includes(caution) && other.includes(caution)),
  );

const isSameSet = (one: readonly BucketCaution[], other: readonly BucketCaution[]): boolean =>
  one.length === other.length && one.every((caution) => other.includes(caution));

/** What a keeper who calls two buckets the same glaze sets for each: its name, and the cautions of both. */
export const joinGlaze = (
  one: BucketState,
  other: BucketState,
): { one: Joined; other: Joined | undefined } => {
  const glaze = other.settings.glaze ?? other.settings.name;
  const cautions = shared(one.settings.cautions, other.settings.cautions);
  const changed = ({ settings }: BucketState) => (isSameSet(settings.cautions, cautions) ? {} : { cautions });
  const otherChanged = changed(other);
  const isNamed = other.settings.glaze !== undefined;
  return {
    one: { glaze, ...changed(one) },
    other: isNamed && otherChanged.cautions === undefined ? undefined : { glaze, ...otherChanged },
  };
};
