import type { BucketState } from '../bucket/bucketState.ts';
import { roundKinds, type RoundItem } from './roundItem.ts';

/** What can harm somebody comes before what is a nuisance. */
const urgency = ({ hold }: BucketState): number => (hold?.cause === 'hazard' ? 0 : 1);

/** By need, then by the number of the bucket, as they stand on the shelves; what has no bucket keeps its order. */
export const inOrder = (items: readonly RoundItem[]): RoundItem[] =>
  items.toSorted((a, b) => {
    const byNeed = roundKinds.indexOf(a.kind) - roundKinds.indexOf(b.kind);
    if (byNeed !== 0 || !('bucket' in a) || !('bucket' in b)) return byNeed;
    return urgency(a.bucket) - urgency(b.bucket) || a.bucket.no - b.bucket.no;
  });
