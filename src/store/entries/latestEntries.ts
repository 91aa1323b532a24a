import type { Kysely } from 'kysely';
import type { Instant, Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import type { Tables } from '../migrations/tables.ts';

/** An entry's place in the order of logging, across streams. */
export interface LoggedPlace {
  stream: StreamNo;
  seq: Seq;
  loggedAt: Instant;
}

/** The last logged first; of several that were logged at one moment, by stream. */
const lastFirst = (a: LoggedPlace, b: LoggedPlace): number =>
  b.loggedAt - a.loggedAt || a.stream - b.stream || b.seq - a.seq;

/**
 * Where the last entries of several streams stand, from one of them on. Each stream is asked by its own key: no index
 * by time has to be kept up at every entry.
 */
export const latestPlaces = async (
  db: Kysely<Tables>,
  studio: StudioId,
  streams: readonly StreamNo[],
  { from, most }: { from?: LoggedPlace; most: number },
): Promise<LoggedPlace[]> => {
  const places: LoggedPlace[] = [];
  for (const stream of streams) {
    let query = db
      .selectFrom('events')
      .where('studio_id', '=', studio)
      .where('stream_no', '=', stream)
      .select(['seq', 'logged_at'])
      .orderBy('seq', 'desc')
      .limit(most);
    if (from) query = query.where('logged_at', stream < from.stream ? '<' : '<=', from.loggedAt);
    if (from && stream === from.stream) query = query.where('seq', '<=', from.seq);
    for (const { seq, logged_at: loggedAt } of await query.execute()) places.push({ stream, seq, loggedAt });
  }
  return places.sort(lastFirst).slice(0, most);
};
