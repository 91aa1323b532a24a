import type { Kysely } from 'kysely';
import { foldBucket } from '../../studio/bucket/fold/foldBucket.ts';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import { frozen } from '../engine/frozen.ts';
import type { StreamState } from '../engine/snapshotCache.ts';
import { readBucket } from '../entries/readEntries.ts';
import { saveStreamState } from './saveStreamState.ts';
import type { Tables } from '../migrations/tables.ts';

/** Folds a bucket from its entries and saves the state. */
export const refoldAndSave = async (
  db: Kysely<Tables>,
  studio: StudioId,
  stream: StreamNo,
  last: Seq,
): Promise<StreamState> => {
  const state = foldBucket(stream, await readBucket(db, studio, stream));
  const stands = { seq: last, stored: last, ...(state && { state: frozen(state) }) };
  await saveStreamState(db, studio, stream, stands);
  return stands;
};
