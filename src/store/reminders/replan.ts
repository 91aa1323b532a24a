import { randomBytes } from 'node:crypto';
import type { Transaction } from 'kysely';
import { instant, type Instant, type StudioId } from '../../studio/ids.ts';
import type { ReminderSubject, WantedReminder } from '../../studio/remind/reminder.ts';
import { writeAbout } from './reminderRow.ts';
import type { Tables } from '../migrations/tables.ts';

/** 22 characters that mark repeats of one message; platforms accept up to 25. */
export const newNonce = (): string => randomBytes(16).toString('base64url');

/** A reminder as a row with no tries yet. */
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
  // Already past its time when it is planned: due now, and not late.
  put_off_to: dueAt < now ? now : null,
  nonce: newNonce(),
  claimed: 0,
  unsure_since: null,
  tries: 0,
  leased_until: null,
});

/**
 * Brings the queue in line with what the logbook asks for about a subject: adds new reminders, moves those with a new
 * time, deletes those that are no longer wanted. Delivered and finished ones are not added again.
 */
export const replan = async (
  db: Transaction<Tables>,
  studio: StudioId,
  subject: ReminderSubject,
  wanted: readonly WantedReminder[],
  now: Instant,
  /** Whether a reminder that is not in the queue is still worth adding. */
  isOfUse = ({ goodUntil }: WantedReminder) => goodUntil > now,
): Promise<void> => {
  const queued = await db
    .selectFrom('reminders')
    .where(({ and }) => and({ studio_id: studio, subject }))
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

/** Saves a reminder that a member asked for; an earlier one of the same key is moved, told already or not. */
export const saveAsked = async (
  db: Transaction<Tables>,
  studio: StudioId,
  wanted: WantedReminder,
  now: Instant,
): Promise<string> => {
  const row = freshRow(studio, 'asked', wanted, now);
  await db
    .insertInto('reminders')
    .values(row)
    .onConflict((conflict) => conflict.columns(['studio_id', 'member_id', 'key']).doUpdateSet(row))
    .execute();
  return wanted.key;
};
