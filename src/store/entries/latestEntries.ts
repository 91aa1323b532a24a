import type { Kysely } from 'kysely';
import type { Entry } from '../../studio/entry.ts';
import {
  entryId,
  instant,
  seq,
  type EntryId,
  type Instant,
  type Seq,
  type StreamNo,
  type StudioId,
} from '../../studio/ids.ts';
import type { LoggedEvent, Notes } from '../../studio/logbook/ports.ts';
import { compiledOnce } from '../engine/compiledOnce.ts';
import type { Tables } from '../migrations/tables.ts';
import { notByItself, readEntries } from './readEntries.ts';

/** An entry's place in the order of logging, across streams. */
export interface LoggedPlace {
  stream: StreamNo;
  seq: Seq;
  loggedAt: Instant;
}

/** The last logged first; of several that were logged at one moment, by stream. */
const lastFirst = (a: LoggedPlace, b: LoggedPlace): number =>
  b.loggedAt - a.loggedAt || a.stream - b.stream || b.seq - a.seq;

interface Range extends Record<string, unknown> {
  studio: StudioId;
  stream: StreamNo;
  until: Instant;
  upTo: Seq;
  most: number;
}

// Compiled once, because it is asked of every bucket.
const placesOf = compiledOnce<Range, { seq: Seq; logged_at: Instant }>((db, value) =>
  db
    .selectFrom('events')
    .where('studio_id', '=', value('studio'))
    .where('stream_no', '=', value('stream'))
    .where('logged_at', '<=', value('until'))
    .where('seq', '<=', value('upTo'))
    .where(notByItself)
    .select(['seq', 'logged_at'])
    .orderBy('seq', 'desc')
    .limit(value('most')),
);

const always = instant(Number.MAX_SAFE_INTEGER);
const last = seq(Number.MAX_SAFE_INTEGER);

/**
 * Where the last entries of several streams stand, from one of them on. Each stream is asked by its own key: no index
 * by time has to be kept up at every entry.
 */
const latestPlaces = async (
  db: Kysely<Tables>,
  studio: StudioId,
  streams: readonly StreamNo[],
  { from, most }: { from?: LoggedPlace; most: number },
): Promise<LoggedPlace[]> => {
  const places: LoggedPlace[] = [];
  for (const stream of streams) {
    const until = from ? instant(from.loggedAt - (stream < from.stream ? 1 : 0)) : always;
    const upTo = from && stream === from.stream ? from.seq : last;
    const found = await placesOf(db, { studio, stream, until, upTo, most });
    for (const { seq: at, logged_at: loggedAt } of found) places.push({ stream, seq: at, loggedAt });
  }
  return places.sort(lastFirst).slice(0, most);
};

/** The last logged entries of several streams, from one of them on. */
export const readLatest = async (
  db: Kysely<Tables>,
  studio: StudioId,
  streams: readonly StreamNo[],
  range: { from?: LoggedPlace; most: number },
): Promise<(Entry<LoggedEvent> & Notes)[]> => {
  const places = await latestPlaces(db, studio, streams, range);
  const found = new Map<EntryId, Entry<LoggedEvent> & Notes>();
  for (const stream of new Set(places.map((place) => place.stream))) {
    const seqs = places.filter((place) => place.stream === stream).map((place) => place.seq);
    const [first, end] = [Math.max(...seqs), Math.min(...seqs)];
    const part = { before: seq(first + 1), most: first - end + 1, byMembers: true } as const;
    for (const entry of await readEntries(db, studio, stream, part)) found.set(entry.id, entry);
  }
  return places.flatMap((place) => found.get(entryId(place.stream, place.seq)) ?? []);
};
