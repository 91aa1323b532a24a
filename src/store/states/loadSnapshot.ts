import type { Kysely } from 'kysely';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { foldBucket } from '../../studio/bucket/foldBucket.ts';
import { foldStudio } from '../../studio/settings/foldStudio.ts';
import { studioStream, type StreamNo, type StudioId } from '../../studio/ids.ts';
import { foldFingerprint } from './foldFingerprint.ts';
import { frozen } from '../engine/frozen.ts';
import type { Head, Snapshot } from '../engine/snapshotCache.ts';
import { readBucket, readStudio } from '../entries/readEntries.ts';
import type { Tables } from '../migrations/tables.ts';

/** Ours, written by this version of the fold, and proved by a rebuild: not checked again on every start. */
export const readState = (json: string): BucketState => JSON.parse(json) as BucketState;

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
    const state =
      row.state !== null && row.folded_by === foldFingerprint
        ? readState(row.state)
        : foldBucket(
            row.stream_no,
            row.stream_no > studioStream ? await readBucket(db, studio, row.stream_no) : [],
          );
    heads.set(row.stream_no, { seq: row.seq, ...(state && { state: frozen(state) }) });
  }
  return { studio: frozen(foldStudio(await readStudio(db, studio, studioStream))), heads };
};
