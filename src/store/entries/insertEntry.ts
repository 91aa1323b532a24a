import type { Transaction } from 'kysely';
import type { Entry } from '../../studio/entry.ts';
import type { StudioId } from '../../studio/ids.ts';
import type { LoggedEvent } from '../../studio/logbook/ports.ts';
import { compiledOnce } from '../engine/compiledOnce.ts';
import { writeEvent } from './eventRow.ts';
import type { Tables } from '../migrations/tables.ts';
import { withoutNul } from '../engine/withoutNul.ts';

const insertEvent = compiledOnce<{ [Column in keyof Tables['events']]: Tables['events'][Column] }>(
  (db, value) =>
    db.insertInto('events').values({
      studio_id: value('studio_id'),
      stream_no: value('stream_no'),
      seq: value('seq'),
      at: value('at'),
      logged_at: value('logged_at'),
      member_id: value('member_id'),
      event: value('event'),
      undoes: value('undoes'),
    }),
  { isAwaited: false },
);

export const insertEntry = async (
  db: Transaction<Tables>,
  studio: StudioId,
  { id, stream, seq, at, loggedAt, by, event }: Entry<LoggedEvent>,
  note: string | undefined,
): Promise<void> => {
  if (!Number.isSafeInteger(at) || !Number.isSafeInteger(loggedAt)) {
    throw new Error(`Entry ${id} is at no time that can be stored: ${at}, logged ${loggedAt}.`);
  }
  await insertEvent(db, {
    studio_id: studio,
    stream_no: stream,
    seq,
    at,
    logged_at: loggedAt,
    member_id: by,
    event: writeEvent(stream, event),
    undoes: event.kind === 'undo' ? event.of : null,
  });
  const words = withoutNul(note ?? '');
  if (words === '') return;
  await db
    .insertInto('notes')
    .values({ studio_id: studio, stream_no: stream, seq, note: words, removed_by: null })
    .execute();
};
