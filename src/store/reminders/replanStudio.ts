import type { Kysely, Transaction } from 'kysely';
import type { ResistCoat } from '../../studio/resist/resistCoat.ts';
import { coatReminders } from '../../studio/remind/coatReminders.ts';
import { studioStream, type Instant, type StudioId } from '../../studio/ids.ts';
import { morningReminders } from '../../studio/remind/morningReminders.ts';
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

/** Plans the coats that are new, changed or gone. */
export const replanCoats = async (
  { db, id, studio, now }: Planning,
  before: readonly ResistCoat[],
  after: readonly ResistCoat[],
): Promise<void> => {
  const still = new Set(after.map(({ seq }) => seq));
  const known = new Set(before);
  const gone = before.filter(({ seq }) => !still.has(seq));
  const touched = after.filter((coat) => !known.has(coat));
  // The zone may come from another machine and be unknown here; a keeper must still be able to change it.
  if (gone.length + touched.length === 0 || !isZone(studio.zone)) return;
  for (const coat of gone) await replan(db, id, coat.id, [], now);
  for (const coat of touched) await replan(db, id, coat.id, coatReminders(coat, studio), now);
};

export const replanSessions = async ({ db, id, studio, now }: Planning): Promise<void> => {
  if (!isZone(studio.zone)) return;
  // A session that has begun keeps its reminder, even a postponed one, but does not get a new one.
  const isToCome = ({ about }: WantedReminder) => about.kind === 'buckets' && about.from > now;
  await replan(db, id, 'sessions', sessionReminders(studio, now), now, isToCome);
};

export const replanMornings = async ({ db, id, studio, now }: Planning): Promise<void> => {
  if (!isZone(studio.zone)) return;
  // A morning that is over when it is first wanted is not told; one that was missed is.
  const isToCome = ({ dueAt }: WantedReminder) => dueAt > now;
  await replan(db, id, 'mornings', morningReminders(studio, now), now, isToCome);
};

const kindsMovingReminders: ReadonlySet<StudioEvent['kind']> = new Set([
  'zone',
  'hours',
  'closures',
  'drying',
  'session',
  'session-off',
  'reminders',
  'firing',
  'morning',
  'keeper',
  'undo',
]);

/** Whether a studio event can change planned reminders. */
export const movesReminders = ({ kind }: StudioEvent): boolean => kindsMovingReminders.has(kind);

/** After a change of channel: retries reminders that could not be delivered, and lets keepers be told again. */
export const reachAnew = async ({ db, id, now }: Planning): Promise<void> => {
  await db.deleteFrom('reminders').where('studio_id', '=', id).where('subject', '=', 'reach').execute();
  await db
    .updateTable('reminders')
    .set({ next_at: now })
    .where(({ and }) => and({ studio_id: id, status: 'pending', claimed: 0 }))
    .where('due_at', '<=', now)
    .where('put_off_to', 'is', null)
    .execute();
};

/** What a studio says that is planned anew as time goes on. One of thousands that never said it is not looked at. */
const planned: readonly StudioEvent['kind'][] = ['session', 'morning'];

export const studiosToPlan = (db: Kysely<Tables>): Promise<{ id: StudioId }[]> =>
  db
    .selectFrom('studios')
    .where(({ exists, or, selectFrom }) =>
      exists(
        selectFrom('events')
          .whereRef('events.studio_id', '=', 'studios.id')
          .where('events.stream_no', '=', studioStream)
          .where((event) => or(planned.map((kind) => event('events.event', 'like', `%"kind":"${kind}"%`))))
          .select('events.seq'),
      ),
    )
    .select('id')
    .execute();
