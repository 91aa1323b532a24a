import type { Kysely } from 'kysely';
import type { BucketEntry } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { applyToBucket } from '../../studio/bucket/fold/foldBucket.ts';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import { readBucket } from '../entries/readEntries.ts';
import type { Tables } from '../migrations/tables.ts';

/** Whether an entry can be applied to a state: an undo, or what happened earlier, needs the bucket to be folded anew. */
export const addsOn = ({ event: { kind }, at }: BucketEntry, before: BucketState): boolean =>
  kind !== 'undo' && kind !== 'setup' && at >= before.foldedTo;

/** A stored state after the entries logged since it was stored; undefined when they do not simply add on to it. */
export const caughtUp = async (
  db: Kysely<Tables>,
  studio: StudioId,
  stream: StreamNo,
  stored: BucketState,
  last: Seq,
): Promise<BucketState | undefined> => {
  if (stored.seq === last) return stored;
  let state = stored;
  for (const entry of await readBucket(db, studio, stream, { after: stored.seq })) {
    if (!addsOn(entry, state)) return undefined;
    state = applyToBucket(state, entry);
  }
  return state.seq === last ? state : undefined;
};
