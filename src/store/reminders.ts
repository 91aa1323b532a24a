import { sql, type ExpressionBuilder } from 'kysely';
import { days, hours, later, since, type Instant, type StudioId } from '../studio/ids.ts';
import { keepersOf } from '../studio/settings/keepersOf.ts';
import type { ClaimedReminder, ReminderOutcome, ReminderQueue } from '../studio/logbook/ports.ts';
import { ReadingLogbook } from './logbook/readingLogbook.ts';
import { readAbout } from './reminders/reminderRow.ts';
import { freshRow } from './reminders/replan.ts';
import { replanMornings, replanSessions, studiosToPlan } from './reminders/replanStudio.ts';
import { writeAll, type Turns } from './engine/turns.ts';
import type { Tables } from './migrations/tables.ts';

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
export const storedReminders = (turns: Turns): ReminderQueue => {
  const { itsNow, isShared } = turns;
  const isDue = (now: Instant) => {
    // In a file `next_at` alone tells whether nobody holds it.
    const isFree = itsNow ? sql<boolean>`coalesce(leased_until, 0) <= ${itsNow}` : sql<boolean>`true`;
    return ({ and, eb }: ExpressionBuilder<Tables, 'reminders'>) =>
      and([isPending, eb('next_at', '<=', now), isFree]);
  };

  const planOne = (studio: StudioId, now: Instant): Promise<void> =>
    writeAll(turns, { rows: studio }, async (writing) => {
      const known = await new ReadingLogbook(writing, studio).studio();
      const planning = { db: writing.db, id: studio, studio: known, now };
      await replanSessions(planning);
      await replanMornings(planning);
    });

  const take = (now: Instant, leaseEnds: Instant, most: number): Promise<ClaimedReminder[]> => {
    const lease = itsNow
      ? { leased_until: sql<Instant>`${itsNow} + ${sql.lit(since(now, leaseEnds))}` }
      : { next_at: leaseEnds };
    return writeAll(turns, 'directory', async ({ db }) => {
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
            .where(isDue(now))
            .orderBy('next_at')
            .limit(most)
            .select('id')
            // What another process is claiming at this moment is its own.
            .$if(isShared, (query) => query.forUpdate().skipLocked()),
        )
        .returningAll()
        .execute();
      return rows
        .toSorted((a, b) => a.due_at - b.due_at || a.id - b.id)
        .map((row) => ({
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
    });
  };

  return {
    async plan(now) {
      const studios = await turns.read('directory', ({ db }) => studiosToPlan(db));
      const failed: unknown[] = [];
      for (const { id } of studios) await planOne(id, now).catch((error: unknown) => failed.push(error));
      if (failed.length > 0) throw new AggregateError(failed, 'some studios could not be planned for');
    },

    reclaim: (now) =>
      writeAll(turns, 'directory', async ({ db }) => {
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
          .$if(isShared, (query) => query.where('claimed', '=', 0))
          .execute();
      }),

    async claim(now, leaseEnds, most) {
      const [first] = await turns.read('directory', ({ db }) =>
        db.selectFrom('reminders').where(isDue(now)).select('id').limit(1).execute(),
      );
      return first ? take(now, leaseEnds, most) : [];
    },

    async hold(reminders, lease) {
      if (itsNow === undefined || reminders.length === 0) return;
      const nonces = reminders.map(({ nonce }) => nonce);
      await writeAll(turns, 'directory', ({ db }) =>
        db
          .updateTable('reminders')
          .set({ leased_until: sql<Instant>`${itsNow} + ${sql.lit(lease)}` })
          .where('nonce', 'in', nonces)
          .where(isPending)
          // What somebody else has claimed since is held by them.
          .where('leased_until', '>', itsNow)
          .execute(),
      );
    },

    async isHeld({ studio, member, key, nonce, tries }) {
      if (!isShared) return true;
      const [row] = await turns.read({ rows: studio }, ({ db }) =>
        db
          .selectFrom('reminders')
          .where(({ and }) => and({ studio_id: studio, member_id: member, key, nonce, tries }))
          .where(isPending)
          .select('id')
          .execute(),
      );
      return row !== undefined;
    },

    settle: ({ studio, member, key, nonce, tries }, outcome) =>
      writeAll(turns, { rows: studio }, async ({ db }) => {
        await db
          .updateTable('reminders')
          .set(changeFor(outcome))
          // A reminder that was postponed or moved since has a new nonce.
          .where(({ and }) => and({ studio_id: studio, member_id: member, key, nonce }))
          // Whoever claimed it again decides, unless it was told.
          .$if(!('told' in outcome), (query) => query.where('tries', '=', tries))
          .where(isPending)
          .execute();
      }),

    unreachable: (studio, why, now) =>
      writeAll(turns, { rows: studio }, async (writing) => {
        const known = await new ReadingLogbook(writing, studio).studio();
        for (const member of keepersOf(known)) {
          const row = freshRow(
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
          );
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
        }
      }),
  };
};
