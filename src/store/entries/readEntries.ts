import type { BucketEntry } from '../../studio/bucket/bucketEvent.ts';
import { sql, type Kysely } from 'kysely';
import type { Entry } from '../../studio/entry.ts';
import {
  coatStream,
  firedStream,
  pieceStream,
  studioStream,
  entryId,
  type Seq,
  type StreamNo,
  type StudioId,
} from '../../studio/ids.ts';
import type { LoggedEvent, Notes } from '../../studio/logbook/ports.ts';
import type { StudioEvent } from '../../studio/settings/studio.ts';
import {
  readBucketEvent,
  readCoatEvent,
  readEvent,
  readFiredEvent,
  readPieceEvent,
  readStudioEvent,
} from './eventRow.ts';
import type { Tables } from '../migrations/tables.ts';

type EntryRow = Omit<Tables['events'], 'studio_id' | 'undoes'>;

const entryOf = <E>(row: EntryRow, event: E): Entry<E> => ({
  id: entryId(row.stream_no, row.seq),
  stream: row.stream_no,
  seq: row.seq,
  at: row.at,
  loggedAt: row.logged_at,
  by: row.member_id,
  event,
});

/** Resolves the author of an entry: after two members were linked, it is the one whose name stayed. */
const inStream = (db: Kysely<Tables>, studio: StudioId, stream: StreamNo) =>
  db
    .selectFrom('events as entry')
    .leftJoin('member_joins as joined', (join) =>
      join
        .onRef('joined.studio_id', '=', 'entry.studio_id')
        .onRef('joined.member_id', '=', 'entry.member_id'),
    )
    .where('entry.studio_id', '=', studio)
    .where('entry.stream_no', '=', stream)
    .select(['entry.stream_no', 'entry.seq', 'entry.at', 'entry.logged_at', 'entry.event'])
    .select(({ fn }) => fn.coalesce('joined.into_id', 'entry.member_id').as('member_id'));

const entriesOf = async <E>(
  query: ReturnType<typeof inStream>,
  read: (json: string) => E,
): Promise<Entry<E>[]> => (await query.execute()).map((row) => entryOf(row, read(row.event)));

/** All of a bucket's entries, or those after one, to fold. */
export const readBucket = (
  db: Kysely<Tables>,
  studio: StudioId,
  bucket: StreamNo,
  { after }: { after?: Seq } = {},
): Promise<BucketEntry[]> => {
  const all = inStream(db, studio, bucket).orderBy('entry.seq');
  return entriesOf(after === undefined ? all : all.where('entry.seq', '>', after), readBucketEvent);
};

/** All entries of resist coats, to fold. */
export const readCoats = (db: Kysely<Tables>, studio: StudioId) =>
  entriesOf(inStream(db, studio, coatStream).orderBy('entry.seq'), readCoatEvent);

/** The latest entries of pieces on their way to the kiln, to fold. */
export const readPieces = (db: Kysely<Tables>, studio: StudioId, most: number) =>
  entriesOf(inStream(db, studio, pieceStream).orderBy('entry.seq', 'desc').limit(most), readPieceEvent);

/** All fired results, to fold. */
export const readFired = (db: Kysely<Tables>, studio: StudioId) =>
  entriesOf(inStream(db, studio, firedStream).orderBy('entry.seq'), readFiredEvent);

/** After two members were linked, an event that names the one means the other. */
const currentMembers = async (db: Kysely<Tables>, studio: StudioId) => {
  const joins = await db
    .selectFrom('member_joins')
    .where('studio_id', '=', studio)
    .select(['member_id', 'into_id'])
    .execute();
  const now = new Map(joins.map(({ member_id, into_id }) => [member_id, into_id]));
  return <E extends LoggedEvent>(event: E): E =>
    'member' in event ? { ...event, member: now.get(event.member) ?? event.member } : event;
};

/** All of a studio's own entries, to fold. */
export const readStudio = async (db: Kysely<Tables>, studio: StudioId): Promise<Entry<StudioEvent>[]> => {
  const meant = await currentMembers(db, studio);
  return entriesOf(inStream(db, studio, studioStream).orderBy('entry.seq'), (json) =>
    meant(readStudioEvent(json)),
  );
};

/** What the program itself wrote down is for its own use: no list shows it to members. */
export const notByItself = sql<boolean>`event not like '{"kind":"learned"%'`;

/**
 * Part of a stream, with notes and undos: the last logged first, or after a given seq the oldest first. Only those that
 * members logged, if so asked.
 */
export const readEntries = async (
  db: Kysely<Tables>,
  studio: StudioId,
  stream: StreamNo,
  range: { before?: Seq; at?: Seq; after?: Seq; most: number; byMembers?: true },
): Promise<(Entry<LoggedEvent> & Notes)[]> => {
  let query = inStream(db, studio, stream)
    .leftJoin('notes as about', (join) =>
      join
        .onRef('about.studio_id', '=', 'entry.studio_id')
        .onRef('about.stream_no', '=', 'entry.stream_no')
        .onRef('about.seq', '=', 'entry.seq'),
    )
    .select(['about.note', 'about.removed_by'])
    .select((select) =>
      select
        .selectFrom('events as undo')
        .whereRef('undo.studio_id', '=', 'entry.studio_id')
        .whereRef('undo.stream_no', '=', 'entry.stream_no')
        .whereRef('undo.undoes', '=', 'entry.seq')
        .select(sql<Seq | null>`min(undo.seq)`.as('seq'))
        .as('undone_by'),
    )
    .orderBy('entry.seq', range.after === undefined ? 'desc' : 'asc')
    .limit(range.most);
  if (range.after !== undefined) query = query.where('entry.seq', '>', range.after);
  if (range.before !== undefined) query = query.where('entry.seq', '<', range.before);
  if (range.at !== undefined) query = query.where('entry.seq', '=', range.at);
  if (range.byMembers) query = query.where(notByItself);
  const rows = await query.execute();
  const meant = stream === studioStream ? await currentMembers(db, studio) : undefined;
  const eventOf = (row: EntryRow) => {
    const event = readEvent(row.stream_no, row.event);
    return meant ? meant(event) : event;
  };
  return rows.map((row) => ({
    ...entryOf(row, eventOf(row)),
    ...(row.note !== null && (row.removed_by === null ? { note: row.note } : { noteRemoved: true as const })),
    ...(row.undone_by !== null && { undoneBy: row.undone_by }),
  }));
};
