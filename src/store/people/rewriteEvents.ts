import { definedOnly } from '../../definedOnly.ts';
import { studioStream, type Seq, type StreamNo, type StudioId } from '../../studio/ids.ts';
import type { LoggedEvent } from '../../studio/logbook/ports.ts';
import { readEvent, writeEvent } from '../entries/eventRow.ts';
import { lastSeq } from '../entries/lastSeq.ts';
import type { Writing } from '../engine/turns.ts';
import { refoldAndSave } from '../states/refoldAndSave.ts';

/** A bucket's state repeats the reason for a hold. Coats are folded again when they are next asked for. */
const refoldStream = async (
  { db, snapshots }: Writing,
  studio: StudioId,
  stream: StreamNo,
): Promise<void> => {
  const snapshot = snapshots.get(studio);
  if (stream <= studioStream) {
    if (snapshot) snapshots.set(studio, definedOnly({ ...snapshot, coats: undefined }));
    return;
  }
  const { last } = await db
    .selectFrom('streams')
    .where(({ and }) => and({ studio_id: studio, stream_no: stream }))
    .select((streams) => lastSeq(streams).as('last'))
    .executeTakeFirstOrThrow();
  const state = await refoldAndSave(db, studio, stream, last);
  if (snapshot) snapshots.set(studio, { ...snapshot, streams: new Map(snapshot.streams).set(stream, state) });
};

/** Rewrites entries of a stream, and folds it anew if that changed any; answers whether it did. */
export const rewriteEvents = async (
  writing: Writing,
  {
    studio,
    stream,
    rows,
  }: { studio: StudioId; stream: StreamNo; rows: readonly { seq: Seq; event: string }[] },
  rewrite: (event: LoggedEvent) => LoggedEvent,
): Promise<boolean> => {
  const { db } = writing;
  let changed = false;
  for (const { seq, event } of rows) {
    const text = writeEvent(stream, rewrite(readEvent(stream, event)));
    if (text === event) continue;
    changed = true;
    await db
      .updateTable('events')
      .set({ event: text })
      .where(({ and }) => and({ studio_id: studio, stream_no: stream, seq }))
      .execute();
  }
  if (!changed) return false;
  await refoldStream(writing, studio, stream);
  return true;
};
