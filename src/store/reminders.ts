import { sql } from 'kysely';
import { days, hours, later, type Instant, type StudioId } from '../studio/ids.ts';
import { keepersOf } from '../studio/settings/keepersOf.ts';
import type { ClaimedReminder, ReminderOutcome, ReminderQueue } from '../studio/logbook/ports.ts';
import { ReadingLogbook } from './logbook/readingLogbook.ts';
import { readAbout } from './reminders/reminderRow.ts';
import { freshRow } from './reminders/replan.ts';
import { replanMornings, replanSessions } from './reminders/replanStudio.ts';
import type { Turns } from './engine/turns.ts';

/** Raw SQL with the literal, because a parameter would not match the partial index. */
const isPending = sql<boolean>`status = 'pending'`;
/** Leases and retries end within this time. */
const longestWait = hours(1);
/** The keepers are told at most once a week that somebody cannot be reached. */
const unreachableNewsFor = days(7);

const changeFor = (outcome: ReminderOutcome) => {
  if ('told' in outcome) return { status: 'told' as const, claimed: 0 };
  if ('dropped' in outcome) return { status: 'dropped' as const, claimed: 0 };
  return { next_at: outcome.again, claimed: 0, ...(!outcome.unsure && { unsure_since: null }) };
};

/**
 * The stored queue of reminders. A claim sets `next_at` to the end of its lease, so that it ends even if the claimant
 * dies.
 */
export class StoredReminders implements ReminderQueue {
  readonly #turns: Turns;

  constructor(turns: Turns) {
    this.#turns = turns;
  }

  async plan(now: Instant): Promise<void> {
    const studios = await this.#turns.read('directory', ({ db }) =>
      db.selectFrom('studios').select('id').execute(),
    );
    const failed: unknown[] = [];
    for (const { id } of studios) await this.#planOne(id, now).catch((error: unknown) => failed.push(error));
    if (failed.length > 0) throw new AggregateError(failed, 'some studios could not be planned for');
  }

  reclaim(now: Instant): Promise<void> {
    return this.#turns.write('directory', async ({ db }) => {
      await db
        .updateTable('reminders')
        .set({ next_at: now, claimed: 0 })
        .where(isPending)
        .where('next_at', '>', now)
        .where('next_at', '<=', later(now, longestWait))
        .where('due_at', '<=', now)
        .where(({ or, eb }) => or([eb('put_off_to', 'is', null), eb('put_off_to', '<=', now)]))
        // Another process may be alive that has claimed it; if not, the lease ends soon.
        .$if(this.#turns.isShared, (query) => query.where('claimed', '=', 0))
        .execute();
      return { keep: true, value: undefined };
    });
  }

  async claim(now: Instant, leaseEnds: Instant, most: number): Promise<ClaimedReminder[]> {
    const isDue = await this.#turns.read('directory', async ({ db }) => {
      const first = await db
        .selectFrom('reminders')
        .where(isPending)
        .where('next_at', '<=', now)
        .select('id')
        .limit(1)
        .executeTakeFirst();
      return first !== undefined;
    });
    return isDue ? this.#take(now, leaseEnds, most) : [];
  }

  settle(reminder: ClaimedReminder, outcome: ReminderOutcome): Promise<void> {
    return this.#turns.write({ rows: reminder.studio }, async ({ db }) => {
      await db
        .updateTable('reminders')
        .set(changeFor(outcome))
        .where('studio_id', '=', reminder.studio)
        .where('member_id', '=', reminder.member)
        .where('key', '=', reminder.key)
        // A reminder that was postponed or moved since has a new nonce.
        .where('nonce', '=', reminder.nonce)
        .where(isPending)
        .execute();
      return { keep: true, value: undefined };
    });
  }

  unreachable(studio: StudioId, why: 'closed' | 'gone', now: Instant): Promise<void> {
    return this.#turns.write({ rows: studio }, async (writing) => {
      const known = await new ReadingLogbook(writing, studio).studio();
      const rows = keepersOf(known).map((member) =>
        freshRow(
          studio,
          'reach',
          {
            key: `unreachable-${why}`,
            member,
            about: { kind: 'unreachable', why },
            dueAt: now,
            goodUntil: later(now, unreachableNewsFor),
          },
          now,
        ),
      );
      for (const row of rows)
        await writing.db
          .insertInto('reminders')
          .values(row)
          .onConflict((conflict) =>
            conflict
              .columns(['studio_id', 'member_id', 'key'])
              .doUpdateSet(row)
              // If the last report is over a week old, it is sent again.
              .where('reminders.status', '<>', 'pending')
              .where('reminders.good_until', '<=', now),
          )
          .execute();
      return { keep: true, value: undefined };
    });
  }

  #planOne(studio: StudioId, now: Instant): Promise<void> {
    return this.#turns.write({ rows: studio }, async (writing) => {
      const known = await new ReadingLogbook(writing, studio).studio();
      const planning = { db: writing.db, id: studio, studio: known, now };
      await replanSessions(planning);
      await replanMornings(planning);
      return { keep: true, value: undefined };
    });
  }

  #take(now: Instant, leaseEnds: Instant, most: number): Promise<ClaimedReminder[]> {
    return this.#turns.write('directory', async ({ db }) => {
      const rows = await db
        .updateTable('reminders')
        .set(({ fn, eb, val }) => ({
          next_at: leaseEnds,
          claimed: 1,
          unsure_since: fn.coalesce('unsure_since', val(now)),
          tries: eb('tries', '+', 1),
        }))
        .where('id', 'in', ({ selectFrom }) =>
          selectFrom('reminders')
            .where(isPending)
            .where('next_at', '<=', now)
            .orderBy('next_at')
            .limit(most)
            .select('id')
            // What another process is claiming at this moment is its own.
            .$if(this.#turns.isShared, (query) => query.forUpdate().skipLocked()),
        )
        .returningAll()
        .execute();
      const value = rows
        .toSorted((a, b) => a.due_at - b.due_at || a.id - b.id)
        .map((row): ClaimedReminder => ({
          studio: row.studio_id,
          member: row.member_id,
          key: row.key,
          about: readAbout(row.about),
          dueAt: row.put_off_to ?? row.due_at,
          goodUntil: row.good_until,
          nonce: row.nonce,
          tries: row.tries,
          ...(row.unsure_since !== null && row.unsure_since < now && { unsureSince: row.unsure_since }),
        }));
      return { keep: true, value };
    });
  }
}
