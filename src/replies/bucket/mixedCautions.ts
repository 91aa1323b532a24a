import type { Brought } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';

interface Pouring {
  words: Pick<Words, 'added' | 'bucket'>;
  source?: BucketState;
  /** Glaze, and not something else. */
  glaze: boolean;
}

/** What whoever puts another glaze, or something harmful, into a bucket is told. */
export const mixedCautions = (
  into: BucketState,
  brings: Brought,
  { words: { added: w, bucket }, source, glaze }: Pouring,
): Text[] => {
  const fresh = brings.cautions.filter((one) => !into.settings.cautions.includes(one));
  return [
    ...(source && brings.foreign ? [w.mixed(into.no, source.settings.name, source.no)] : []),
    ...(glaze && !source && brings.foreign ? [w.mixedUnknown] : []),
    ...(into.settings.cautions.includes('children') ? [w.noChildren] : []),
    ...(fresh.length > 0 ? [w.mixedBrings(fresh), ...fresh.map(bucket.caution)] : []),
  ];
};
