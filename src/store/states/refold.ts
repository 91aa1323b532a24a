import { definedOnly } from '../../definedOnly.ts';
import type { Kysely } from 'kysely';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { studioStream, type Seq, type StreamNo, type StudioId } from '../../studio/ids.ts';
import { bucketAnew } from './foldedAnew.ts';
import type { Tables } from '../migrations/tables.ts';

export interface StreamName {
  studio: StudioId;
  stream: StreamNo;
}

/** Every stream that the cache or the entries know: one that only one of them knows is wrong. */
export const everyStream = async (db: Kysely<Tables>): Promise<StreamName[]> => {
  const counted = db.selectFrom('streams').select(['studio_id', 'stream_no']);
  const written = db.selectFrom('events').select(['studio_id', 'stream_no']);
  const rows = await counted.union(written).orderBy('studio_id').orderBy('stream_no').execute();
  return rows.map((row) => ({ studio: row.studio_id, stream: row.stream_no }));
};

/** Where a stream stands, by its entries alone. */
export const refold = async (
  db: Kysely<Tables>,
  { studio, stream }: StreamName,
): Promise<{ last: Seq | null; count: number; state?: BucketState }> => {
  const { last, count } = await db
    .selectFrom('events')
    .where(({ and }) => and({ studio_id: studio, stream_no: stream }))
    .select(({ fn }) => [fn.max<Seq | null>('seq').as('last'), fn.countAll<number>().as('count')])
    .executeTakeFirstOrThrow();
  const state = stream > studioStream ? await bucketAnew(db, studio, stream) : undefined;
  return { last, count, ...definedOnly({ state }) };
};
