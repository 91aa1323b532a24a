import { isDeepStrictEqual } from 'node:util';
import type { Kysely } from 'kysely';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { foldBucket } from '../../studio/bucket/foldBucket.ts';
import { foldStudio } from '../../studio/settings/foldStudio.ts';
import { studioStream, type StreamNo, type StudioId } from '../../studio/ids.ts';
import { foldedBy } from './foldedBy.ts';
import { frozen } from '../engine/frozen.ts';
import type { Head, Snapshot } from '../engine/snapshotCache.ts';
import { readBucket, readStudio } from '../entries/readEntries.ts';
import type { Tables } from '../migrations/tables.ts';

/** Ours, written by this version of the fold, and proved by a rebuild: not checked again on every start. */
export const readState = (json: string): BucketState => JSON.parse(json) as BucketState;

/** The state that a bucket's entries add up to. One that comes out as it was stays as it was written, key for key. */
const foldAnew = async (
  db: Kysely<Tables>,
  studio: StudioId,
  stream: StreamNo,
  cached: BucketState | undefined,
): Promise<BucketState | undefined> => {
  if (stream <= studioStream) return undefined;
  const state = foldBucket(stream, await readBucket(db, studio, stream));
  return isDeepStrictEqual(state, cached) ? cached : state;
};

/** Everything that a studio's entries add up to, from cached states as far as they hold good. */
export const loadSnapshot = async (db: Kysely<Tables>, studio: StudioId): Promise<Snapshot> => {
  const rows = await db
    .selectFrom('streams')
    .where('studio_id', '=', studio)
    .select(['stream_no', 'seq', 'folded_by', 'state'])
    .orderBy('stream_no')
    .execute();
  const heads = new Map<StreamNo, Head>();
  for (const row of rows) {
    const cached = row.state === null ? undefined : readState(row.state);
    const state =
      cached && row.folded_by === foldedBy ? cached : await foldAnew(db, studio, row.stream_no, cached);
    heads.set(row.stream_no, { seq: row.seq, ...(state && { state: frozen(state) }) });
  }
  return { studio: frozen(foldStudio(await readStudio(db, studio, studioStream))), heads };
};
