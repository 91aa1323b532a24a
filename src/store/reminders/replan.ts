import type { Transaction } from 'kysely';
import { instant, type Instant, type StudioId } from '../../studio/ids.ts';
import type { ReminderSubject, WantedReminder } from '../../studio/remind/reminder.ts';
import { newNonce } from '../engine/newNonce.ts';
import { writeAbout } from './reminderRow.ts';
import type { Tables } from '../migrations/tables.ts';

/** A reminder as a row that nobody has tried to say yet. */
export const freshRow = (
  studio: StudioId,
  subject: ReminderSubject,
  { key, member, about, dueAt, goodUntil }: WantedReminder,
  now: Instant,
) => ({
  studio_id: studio,
  member_id: member,
  key,
  subject,
  about: writeAbout(about),
  status: 'pending' as const,
  due_at: dueAt,
  next_at: instant(Math.max(dueAt, now)),
  good_until: goodUntil,
  // Asked for after its time, it is due now, and not late.
  put_off_to: dueAt < now ? now : null,
  nonce: newNonce(),
  claimed: 0,
  unsure_since: null,
  tries: 0,
});

/**
 * Makes the queue hold what the logbook asks for about a subject: adds what is new, moves what comes at another
 * time, takes out what nobody wants any more. What was said, or dealt with, is not asked for again.
 */
export const replan = async (
  db: Transaction<Tables>,
  studio: StudioId,
  subject: ReminderSubject,
  wanted: readonly WantedReminder[],
  now: Instant,
  /** Whether one that is not there yet is still worth asking for. */
  isOfUse = ({ goodUntil }: WantedReminder) => goodUntil > now,
): Promise<void> => {
  const queued = await db
    .selectFrom('reminders')
    .where('studio_id', '=', studio)
    .where('subject', '=', subject)
    .select(['id', 'member_id', 'key', 'about', 'status', 'due_at', 'good_until'])
    .execute();
  const found = (one: WantedReminder) =>
    queued.find((row) => row.member_id === one.member && row.key === one.key);
  const kept = new Set(wanted.map((one) => found(one)?.id));
  for (const row of queued)
    if (row.status === 'pending' && !kept.has(row.id))
      await db.deleteFrom('reminders').where('id', '=', row.id).execute();
  for (const one of wanted) {
    const row = found(one);
    const fresh = freshRow(studio, subject, one, now);
    if (!row) {
      if (isOfUse(one)) await db.insertInto('reminders').values(fresh).execute();
    } else if (
      row.status === 'pending' &&
      (row.due_at !== fresh.due_at || row.good_until !== fresh.good_until || row.about !== fresh.about)
    )
      await db.updateTable('reminders').set(fresh).where('id', '=', row.id).execute();
  }
};
