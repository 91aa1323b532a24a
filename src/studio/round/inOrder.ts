import type { BucketState } from '../bucket/bucketState.ts';
import { roundKinds, type RoundItem } from './roundItem.ts';

/** What can harm somebody comes before what is a nuisance. */
const urgency = ({ hold }: BucketState): number => (hold?.cause === 'hazard' ? 0 : 1);

/** Where a bucket stands in the room: by its number, as they stand on the shelves. */
const placeOf = ({ no }: BucketState): number => no;

/** By need, then as one walks through the room; what has no bucket keeps its order. */
export const inOrder = (items: readonly RoundItem[]): RoundItem[] =>
  items.toSorted((a, b) => {
    const byNeed = roundKinds.indexOf(a.kind) - roundKinds.indexOf(b.kind);
    if (byNeed !== 0 || !('bucket' in a) || !('bucket' in b)) return byNeed;
    return urgency(a.bucket) - urgency(b.bucket) || placeOf(a.bucket) - placeOf(b.bucket);
  });
