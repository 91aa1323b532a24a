import type { CorrectionWay } from '../../studio/batch/correctBucket.ts';
import type { Added } from '../../studio/bucket/bucketEvent.ts';
import { losesFlux } from '../../studio/bucket/bucketHazards.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';

/** What to beware of while it goes into a bucket, or comes out. */
export const handlingCautions = (
  what: Added['what'] | CorrectionWay,
  { settings }: BucketState,
  { caution }: Words['verdict'],
): Text[] => {
  if (what === 'dry') return [caution('dust')];
  if (what === 'deflocculant') return [caution('deflocculant')];
  if (what !== 'draw-off') return [];
  return [...(losesFlux(settings) ? [caution('drawn-flux')] : []), caution('drawn-water')];
};
