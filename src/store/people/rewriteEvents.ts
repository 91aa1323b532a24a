import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import type { LoggedEvent } from '../../studio/logbook/ports.ts';
import { readEvent, writeEvent } from '../entries/eventRow.ts';
import { lastSeq } from '../entries/lastSeq.ts';
import type { Writing } from '../engine/turns.ts';
import { refoldAfterErasure } from '../states/refoldAfterErasure.ts';

/** Stores entries as they are told from now on, and folds their stream anew; answers whether any is told otherwise. */
export const rewriteEvents = async (
  writing: Writing,
  {
    studio,
    stream,
    rows,
  }: { studio: StudioId; stream: StreamNo; rows: readonly { seq: Seq; event: string }[] },
  retold: (event: LoggedEvent) => LoggedEvent,
): Promise<boolean> => {
  const { db } = writing;
  let changed = false;
  for (const { seq, event } of rows) {
    const text = writeEvent(stream, retold(readEvent(stream, event)));
    if (text === event) continue;
    changed = true;
    await db
      .updateTable('events')
      .set({ event: text })
      .where(({ and }) => and({ studio_id: studio, stream_no: stream, seq }))
      .execute();
  }
  if (!changed) return false;
  const { seq: last } = await db
    .selectFrom('streams')
    .where(({ and }) => and({ studio_id: studio, stream_no: stream }))
    .select((streams) => lastSeq(streams).as('seq'))
    .executeTakeFirstOrThrow();
  await refoldAfterErasure(writing, studio, stream, last);
  return true;
};
