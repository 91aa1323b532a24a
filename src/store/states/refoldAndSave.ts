import type { Kysely } from 'kysely';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import { frozen } from '../engine/frozen.ts';
import type { StreamState } from '../engine/snapshotCache.ts';
import { bucketAnew } from './foldedAnew.ts';
import { saveStreamState } from './saveStreamState.ts';
import type { Tables } from '../migrations/tables.ts';

/** Folds a bucket from its entries and saves the state. */
export const refoldAndSave = async (
  db: Kysely<Tables>,
  studio: StudioId,
  stream: StreamNo,
  last: Seq,
): Promise<StreamState> => {
  const state = await bucketAnew(db, studio, stream);
  const stands = { seq: last, stored: last, ...(state && { state: frozen(state) }) };
  await saveStreamState(db, studio, stream, stands);
  return stands;
};
