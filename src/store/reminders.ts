import { sql } from 'kysely';
import { days, hours, later, since, type Duration, type Instant, type StudioId } from '../studio/ids.ts';
import { keepersOf } from '../studio/settings/keepersOf.ts';
import type { ClaimedReminder, ReminderOutcome, ReminderQueue } from '../studio/logbook/ports.ts';
import { ReadingLogbook } from './logbook/readingLogbook.ts';
import { readAbout } from './reminders/reminderRow.ts';
import { freshRow } from './reminders/replan.ts';
import { replanMornings, replanSessions } from './reminders/replanStudio.ts';
import { studiosToPlan } from './reminders/studiosToPlan.ts';
import type { Turns } from './engine/turns.ts';

/** Raw SQL with the literal, because a parameter would not match the partial index. */
const isPending = sql<boolean>`status = 'pending'`;
/** Leases and retries end within this time. */
const longestWait = hours(1);
/** The keepers are told at most once a week that somebody cannot be reached. */
const unreachableNewsFor = days(7);

const changeFor = (outcome: ReminderOutcome) => {
  const free = { claimed: 0, leased_until: null };
  if ('told' in outcome) return { ...free, status: 'told' as const };
  if ('dropped' in outcome) return { ...free, status: 'dropped' as const };
  return { ...free, next_at: outcome.again, ...(!outcome.unsure && { unsure_since: null }) };
};

/**
 * The stored queue of reminders. A claim ends with its lease, even if the claimant dies. Several processes measure the
 * lease by the database's clock: theirs may differ by minutes.
 */
export class StoredReminders implements ReminderQueue {
  readonly #turns: Turns;

  constructor(turns: Turns) {
    this.#turns = turns;
  }

  async plan(now: Instant): Promise<void> {
    const studios = await this.#turns.read('directory', ({ db }) => studiosToPlan(db));
    const failed: unknown[] = [];
    for (const { id } of studios) await this.#planOne(id, now).catch((error: unknown) => failed.push(error));
    if (failed.length > 0) throw new AggregateError(failed, 'some studios could not be planned for');
  }

  reclaim(now: Instant): Promise<void> {
    return this.#turns.write('directory', async ({ db }) => {
      await db
        .updateTable('reminders')
        // What stood in the way of earlier tries may have ended with that program.
        .set({ next_at: now, claimed: 0, tries: 0 })
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
        .where(this.#isFree())
        .select('id')
        .limit(1)
        .executeTakeFirst();
      return first !== undefined;
    });
    return isDue ? this.#take(now, leaseEnds, most) : [];
  }

  async hold(reminders: readonly ClaimedReminder[], lease: Duration): Promise<void> {
    const { itsNow } = this.#turns;
    if (itsNow === undefined || reminders.length === 0) return;
    const until = sql<Instant>`${itsNow} + ${sql.lit(lease)}`;
    const nonces = reminders.map(({ nonce }) => nonce);
    await this.#turns.write('directory', async ({ db }) => {
      await db
        .updateTable('reminders')
        .set({ leased_until: until })
        .where('nonce', 'in', nonces)
        .where(isPending)
        // What somebody else has claimed since is held by them.
        .where('leased_until', '>', itsNow)
        .execute();
      return { keep: true, value: undefined };
    });
  }

  async isHeld({ studio, member, key, nonce, tries }: ClaimedReminder): Promise<boolean> {
    if (!this.#turns.isShared) return true;
    return this.#turns.read({ rows: studio }, async ({ db }) => {
      const row = await db
        .selectFrom('reminders')
        .where('studio_id', '=', studio)
        .where('member_id', '=', member)
        .where('key', '=', key)
        .where('nonce', '=', nonce)
        .where('tries', '=', tries)
        .where(isPending)
        .select('id')
        .executeTakeFirst();
      return row !== undefined;
    });
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
        // Whoever claimed it again decides, unless it was told.
        .$if(!('told' in outcome), (query) => query.where('tries', '=', reminder.tries))
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

  /** Whether nobody holds it: in a file `next_at` alone tells. */
  #isFree() {
    const { itsNow } = this.#turns;
    return itsNow ? sql<boolean>`coalesce(leased_until, 0) <= ${itsNow}` : sql<boolean>`true`;
  }

  #take(now: Instant, leaseEnds: Instant, most: number): Promise<ClaimedReminder[]> {
    const { itsNow } = this.#turns;
    const lease = itsNow
      ? { leased_until: sql<Instant>`${itsNow} + ${sql.lit(since(now, leaseEnds))}` }
      : { next_at: leaseEnds };
    return this.#turns.write('directory', async ({ db }) => {
      const rows = await db
        .updateTable('reminders')
        .set(({ fn, eb, val }) => ({
          ...lease,
          claimed: 1,
          unsure_since: fn.coalesce('unsure_since', val(now)),
          tries: eb('tries', '+', 1),
        }))
        .where('id', 'in', ({ selectFrom }) =>
          selectFrom('reminders')
            .where(isPending)
            .where('next_at', '<=', now)
            .where(this.#isFree())
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
          // Not this try's own: another's clock may be ahead.
          ...(row.unsure_since !== null && row.unsure_since !== now && { unsureSince: row.unsure_since }),
        }));
      return { keep: true, value };
    });
  }
}
