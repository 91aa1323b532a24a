import type { Kysely } from 'kysely';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
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
);

const upsertSeq = compiledOnce<{ studio_id: StudioId; stream_no: StreamNo; seq: Seq; none: null }>(
  (db, value) =>
    db
      .insertInto('streams')
      .values({
        studio_id: value('studio_id'),
        stream_no: value('stream_no'),
        seq: value('seq'),
        folded_by: value('none'),
        state: value('none'),
      })
      .onConflict((conflict) =>
        conflict.columns(['studio_id', 'stream_no']).doUpdateSet({ seq: value('seq') }),
      ),
);

/** Saves a stream's last seq alone. The stored state stays as of an earlier entry: `caughtUp` adds the later ones. */
export const saveStreamSeq = async (
  db: Kysely<Tables>,
  studio: StudioId,
  stream: StreamNo,
  seq: Seq,
): Promise<void> => {
  await upsertSeq(db, { studio_id: studio, stream_no: stream, seq, none: null });
};

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
