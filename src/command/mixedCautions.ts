import type { Brought } from '../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../studio/bucket/bucketState.ts';
import type { Text } from '../words/text/text.ts';
import type { Words } from '../words/words.ts';

/** What whoever pours, or means to pour, another glaze into a bucket is told. */
export const mixedCautions = (
  into: BucketState,
  source: BucketState | undefined,
  brings: Brought,
  { added: w, bucket }: Pick<Words, 'added' | 'bucket'>,
): Text[] => {
  const fresh = brings.cautions.filter((one) => !into.settings.cautions.includes(one));
  return [
    ...(source && brings.hold ? [w.mixed(into.no, source.settings.name, source.no)] : []),
    ...(source ? [] : [w.mixedUnknown]),
    ...(into.settings.cautions.includes('children') ? [w.noChildren] : []),
    ...(fresh.length > 0 ? [w.mixedBrings(fresh), ...fresh.map(bucket.caution)] : []),
  ];
};
