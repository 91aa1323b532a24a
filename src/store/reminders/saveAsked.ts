import type { Transaction } from 'kysely';
import type { Instant, StudioId } from '../../studio/ids.ts';
import type { WantedReminder } from '../../studio/remind/reminder.ts';
import type { Tables } from '../migrations/tables.ts';
import { freshRow } from './replan.ts';

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
