import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import { foldBucket } from '../../src/studio/bucket/fold/foldBucket.ts';
import { streamNo } from '../../src/studio/ids.ts';
import { entriesOf } from './bucketArbitraries.ts';
import { gullGrey } from './store/storeEvents.ts';

/** A bucket of that number and name, with nothing logged of it yet. */
export const bucketOf = (no: number, name: string, nick: string): BucketState => {
  const settings = { ...gullGrey, name, nick };
  const state = foldBucket(streamNo(no), entriesOf([{ event: { kind: 'setup', settings }, minute: 0 }]));
  if (!state) throw new Error('no bucket');
  return state;
};
