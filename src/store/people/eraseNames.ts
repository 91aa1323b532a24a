import { eventWithoutName } from '../../studio/logbook/eventWithoutName.ts';
import { seq, studioStream, type Seq, type StreamNo, type StudioId } from '../../studio/ids.ts';
import { erasedMark, nameAsWord } from '../../studio/people/withoutWords.ts';
import type { Erasure } from './erasureRow.ts';
import { rewriteEvents } from './rewriteEvents.ts';
import { studioAnew } from '../states/foldedAnew.ts';
import { inBatches } from './inBatches.ts';
import { writeAll, type Turns, type Writing } from '../engine/turns.ts';

/** A small batch, so that nobody has to wait for it. */
const entriesAtOnce = 500;

/** Erases one batch of a stream; returns where it ended, undefined at the end of the stream. */
const eraseBatch = async (
  writing: Writing,
  { studio, name, stream, after }: { studio: StudioId; name: RegExp; stream: StreamNo; after: Seq },
): Promise<Seq | undefined> => {
  const { db } = writing;
  const rows = await db
    .selectFrom('events')
    .where(({ and }) => and({ studio_id: studio, stream_no: stream }))
    .where('seq', '>', after)
    .select(['seq', 'event'])
    .orderBy('seq')
    .limit(entriesAtOnce)
    .execute();
  const changed = await rewriteEvents(writing, { studio, stream, rows }, (event) =>
    eventWithoutName(event, name),
  );
  const snapshot = writing.snapshots.get(studio);
  if (changed && stream === studioStream && snapshot)
    writing.snapshots.set(studio, { ...snapshot, studio: await studioAnew(db, studio) });
  return rows.at(-1)?.seq;
};

/** Reminders contain the names of sessions. */
const eraseReminders = async ({ db }: Writing, studio: StudioId, name: RegExp): Promise<void> => {
  const rows = await db
    .selectFrom('reminders')
    .where('studio_id', '=', studio)
    .select(['id', 'key', 'about'])
    .execute();
  for (const { id, key, about } of rows) {
    const fresh = { key: key.replace(name, erasedMark), about: about.replace(name, erasedMark) };
    if (fresh.key !== key || fresh.about !== about)
      await db.updateTable('reminders').set(fresh).where('id', '=', id).execute();
  }
};

/** Erases names from what things are called, in everybody's entries, so that entries still refer to the same things. */
export const eraseNames = async (turns: Turns, { studio, names }: Erasure): Promise<void> => {
  const name = nameAsWord(names);
  if (!name) return;
  await writeAll(turns, { rows: studio }, (writing) => eraseReminders(writing, studio, name));
  const streams = await turns.read({ rows: studio }, ({ db }) =>
    db.selectFrom('streams').where('studio_id', '=', studio).select('stream_no').execute(),
  );
  for (const { stream_no: stream } of streams)
    await inBatches(turns, { logbook: studio }, seq(0), (writing, after) =>
      eraseBatch(writing, { studio, name, stream, after }),
    );
};
