import type { Kysely } from 'kysely';
import type { StreamNo, StudioId } from '../../studio/ids.ts';
import { compiledOnce } from '../engine/compiledOnce.ts';
import type { StreamState } from '../engine/snapshotCache.ts';
import { foldedBy } from './foldedBy.ts';
import type { Tables } from '../migrations/tables.ts';

const upsert = compiledOnce<{ [Column in keyof Tables['streams']]: Tables['streams'][Column] }>(
  (db, value) => {
    const stood = { seq: value('seq'), folded_by: value('folded_by'), state: value('state') };
    return db
      .insertInto('streams')
      .values({ studio_id: value('studio_id'), stream_no: value('stream_no'), ...stood })
      .onConflict((conflict) => conflict.columns(['studio_id', 'stream_no']).doUpdateSet(stood));
  },
  { isAwaited: false },
);

/** Saves where a stream stands: its last seq, and the cached state. */
export const saveStreamState = async (
  db: Kysely<Tables>,
  studio: StudioId,
  stream: StreamNo,
  { seq, state }: StreamState,
): Promise<void> => {
  await upsert(db, {
    studio_id: studio,
    stream_no: stream,
    seq,
    folded_by: state ? foldedBy : null,
    state: state ? JSON.stringify(state) : null,
  });
};
