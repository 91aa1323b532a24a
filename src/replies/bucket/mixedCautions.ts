import { present } from '../../present.ts';
import type { Brought } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';

interface Pouring {
  words: Pick<Words, 'added' | 'bucket'>;
  source?: BucketState;
  glaze: boolean;
}

/** Cautions for a member who adds another glaze, or something harmful. */
export const mixedCautions = (
  into: BucketState,
  brings: Brought,
  { words: { added: w, bucket }, source, glaze }: Pouring,
): Text[] => {
  const fresh = brings.cautions.filter((one) => !into.settings.cautions.includes(one));
  // Gloves are no hazard: what is marked for them says so itself.
  const named = fresh.filter((one) => one !== 'gloves');
  return present([
    source && brings.foreign && w.mixed(into.no, source.settings.name, source.no),
    glaze && !source && brings.foreign && w.mixedUnknown,
    into.settings.cautions.includes('children') && w.noChildren,
    named.length > 0 && w.mixedBrings(named),
    ...fresh.map(bucket.caution),
  ]);
};
