import type { Instant, MemberId, StudioId } from '../../studio/ids.ts';
import { compiledOnce } from '../engine/compiledOnce.ts';
import { utcDay } from '../lines/utcDay.ts';

interface Counted extends Record<string, unknown> {
  studio: StudioId;
  member: MemberId;
  day: number;
  one: number;
}

// Compiled once, because every entry is counted.
const count = compiledOnce<Counted, { entries: number }>((db, value) =>
  db
    .insertInto('daily_entries')
    .values({
      studio_id: value('studio'),
      member_id: value('member'),
      day: value('day'),
      entries: value('one'),
    })
    .onConflict((conflict) =>
      conflict
        .columns(['studio_id', 'member_id', 'day'])
        .doUpdateSet(({ eb }) => ({ entries: eb('daily_entries.entries', '+', value('one')) })),
    )
    .returning('entries'),
);

/** Counts one more entry of a member on a day; returns how many there are then. */
export const countToday = async (
  db: Parameters<typeof count>[0],
  studio: StudioId,
  member: MemberId,
  now: Instant,
): Promise<number> => {
  const [counted] = await count(db, { studio, member, day: utcDay(now), one: 1 });
  if (!counted) throw new Error('An entry could not be counted.');
  return counted.entries;
};
