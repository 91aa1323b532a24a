import type { Kysely } from 'kysely';
import type { StreamNo, StudioId } from '../studio/ids.ts';
import { foldFingerprint } from './foldFingerprint.ts';
import type { Head } from './pages.ts';
import type { Tables } from './tables.ts';

/** Stores where a stream stands: its counter, and the cached state. */
export const saveHead = async (
  db: Kysely<Tables>,
  studio: StudioId,
  stream: StreamNo,
  { seq, state }: Head,
): Promise<void> => {
  const stood = {
    seq,
    folded_by: state ? foldFingerprint : null,
    state: state ? JSON.stringify(state) : null,
  };
  await db
    .insertInto('streams')
    .values({ studio_id: studio, stream_no: stream, ...stood })
    .onConflict((conflict) => conflict.columns(['studio_id', 'stream_no']).doUpdateSet(stood))
    .execute();
};
