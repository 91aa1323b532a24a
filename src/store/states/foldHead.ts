import type { Kysely } from 'kysely';
import { foldBucket } from '../../studio/bucket/foldBucket.ts';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import { frozen } from '../engine/frozen.ts';
import type { Head } from '../engine/snapshotCache.ts';
import { readBucket } from '../entries/readEntries.ts';
import { saveHead } from './saveHead.ts';
import type { Tables } from '../migrations/tables.ts';

/** Folds a bucket from its entries and saves its head. */
export const foldHead = async (
  db: Kysely<Tables>,
  studio: StudioId,
  stream: StreamNo,
  last: Seq,
): Promise<Head> => {
  const state = foldBucket(stream, await readBucket(db, studio, stream));
  const head = { seq: last, ...(state && { state: frozen(state) }) };
  await saveHead(db, studio, stream, head);
  return head;
};
