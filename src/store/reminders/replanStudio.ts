import type { Transaction } from 'kysely';
import type { ResistCoat } from '../../studio/resist/resistCoat.ts';
import { coatReminders } from '../../studio/remind/coatReminders.ts';
import type { Instant, StudioId } from '../../studio/ids.ts';
import type { WantedReminder } from '../../studio/remind/reminder.ts';
import { sessionReminders } from '../../studio/remind/sessionReminders.ts';
import type { Studio, StudioEvent } from '../../studio/settings/studio.ts';
import { isZone } from '../../studio/time/wallTime.ts';
import { replan } from './replan.ts';
import type { Tables } from '../migrations/tables.ts';

export interface Planning {
  db: Transaction<Tables>;
  id: StudioId;
  studio: Studio;
  now: Instant;
}

/** Plans anew for the coats that differ: new, changed, or gone. */
export const replanCoats = async (
  { db, id, studio, now }: Planning,
  before: readonly ResistCoat[],
  after: readonly ResistCoat[],
): Promise<void> => {
  const still = new Set(after.map(({ seq }) => seq));
  const known = new Set(before);
  const gone = before.filter(({ seq }) => !still.has(seq));
  const touched = after.filter((coat) => !known.has(coat));
  // A zone that another machine knew and this one does not must not keep anybody from setting another.
  if (gone.length + touched.length === 0 || !isZone(studio.zone)) return;
  for (const coat of gone) await replan(db, id, coat.id, [], now);
  for (const coat of touched) await replan(db, id, coat.id, coatReminders(coat, studio), now);
};

export const replanSessions = async ({ db, id, studio, now }: Planning): Promise<void> => {
  if (!isZone(studio.zone)) return;
  // A session that is on already keeps its reminder, put off perhaps, but gets none any more.
  const isToCome = ({ about }: WantedReminder) => about.kind === 'buckets' && about.from > now;
  await replan(db, id, 'sessions', sessionReminders(studio, now), now, isToCome);
};

const moves: ReadonlySet<StudioEvent['kind']> = new Set([
  'zone',
  'hours',
  'closures',
  'drying',
  'session',
  'session-off',
  'reminders',
  'firing',
  'keeper',
  'undo',
]);

/** Whether an entry of the studio's can move reminders that are planned. */
export const movesReminders = ({ kind }: StudioEvent): boolean => moves.has(kind);

/** The channel is another one: who could not be reached is tried again, and a keeper told anew when it fails. */
export const reachAnew = async ({ db, id, now }: Planning): Promise<void> => {
  await db.deleteFrom('reminders').where('studio_id', '=', id).where('subject', '=', 'reach').execute();
  await db
    .updateTable('reminders')
    .set({ next_at: now })
    .where('studio_id', '=', id)
    .where('status', '=', 'pending')
    .where('claimed', '=', 0)
    .where('due_at', '<=', now)
    .where('put_off_to', 'is', null)
    .execute();
};
