import { isDeepStrictEqual } from 'node:util';
import type { Kysely } from 'kysely';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { studioStream, type StreamNo, type StudioId } from '../../studio/ids.ts';
import { caughtUp } from './caughtUp.ts';
import { readState } from './bucketStateSchema.ts';
import { bucketAnew, studioAnew } from './foldedAnew.ts';
import { foldedBy } from './foldedBy.ts';
import { frozen } from '../engine/frozen.ts';
import type { StreamState, Snapshot } from '../engine/snapshotCache.ts';
import { lastSeq } from '../entries/lastSeq.ts';
import type { Tables } from '../migrations/tables.ts';

/** Folds a bucket from its entries. If the state is unchanged, the stored row is kept as it is. */
const refoldBucket = async (
  db: Kysely<Tables>,
  studio: StudioId,
  stream: StreamNo,
  cached: BucketState | undefined,
): Promise<BucketState | undefined> => {
  if (stream <= studioStream) return undefined;
  const state = await bucketAnew(db, studio, stream);
  return isDeepStrictEqual(state, cached) ? cached : state;
};

/** A studio's snapshot, from cached states where they are valid. */
export const loadSnapshot = async (db: Kysely<Tables>, studio: StudioId): Promise<Snapshot> => {
  const rows = await db
    .selectFrom('streams')
    .where('studio_id', '=', studio)
    .select(['stream_no', 'folded_by', 'state', (streams) => lastSeq(streams).as('seq')])
    .orderBy('stream_no')
    .execute();
  const streams = new Map<StreamNo, StreamState>();
  for (const row of rows) {
    const { stream_no: stream, seq } = row;
    const cached = readState(row.state);
    const known =
      cached && row.folded_by === foldedBy ? await caughtUp(db, studio, stream, cached, seq) : undefined;
    const state = known ?? (await refoldBucket(db, studio, stream, cached));
    streams.set(stream, {
      seq,
      ...(state && { state: frozen(state) }),
      ...((known || stream <= studioStream) && { stored: cached?.seq ?? seq }),
    });
  }
  return { studio: await studioAnew(db, studio), streams };
};
