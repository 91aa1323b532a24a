import { sql } from 'kysely';
import { days, instant, type Instant } from '../../studio/ids.ts';
import { questionsAreKept } from '../../studio/openQuestion.ts';
import { dropPosts } from './dropPosts.ts';
import { utcDay } from './utcDay.ts';
import type { Turns } from '../engine/turns.ts';

/** Platforms repeat a request within minutes; a week is plenty. */
const repliesAreKept = days(7);
/** A small batch, so that nobody has to wait for it. */
const mostAtOnce = 500;

/** A delivered reminder is kept for as long as the logbook may ask for it again. */
const saidIsKept = days(40);

/** Deletes expired replies, held lines, sealed files, room posts and settled reminders; returns whether there may be more. */
export const dropExpired = (turns: Turns, now: Instant): Promise<boolean> =>
  turns.write('directory', async ({ db }) => {
    const replies = await db
      .deleteFrom('replies')
      .where(({ eb, refTuple, selectFrom }) =>
        eb(
          refTuple('studio_id', 'key'),
          'in',
          selectFrom('replies')
            .where('at', '<', instant(now - repliesAreKept))
            .orderBy('at')
            .limit(mostAtOnce)
            .select(['studio_id', 'key'])
            .$asTuple('studio_id', 'key'),
        ),
      )
      .executeTakeFirst();
    const others = [
      db.deleteFrom('held_lines').where('until', '<=', now),
      db.deleteFrom('shown_once').where('until', '<=', now),
      db
        .deleteFrom('reminders')
        .where(sql<boolean>`status <> 'pending'`)
        .where('good_until', '<', instant(now - saidIsKept)),
      db.deleteFrom('open_questions').where('at', '<', instant(now - questionsAreKept)),
      db.deleteFrom('daily_entries').where('day', '<', utcDay(now)),
    ];
    let dropped = replies.numDeletedRows + (await dropPosts(db, now));
    for (const other of others) dropped += (await other.executeTakeFirst()).numDeletedRows;
    return { keep: dropped > 0n, value: replies.numDeletedRows >= mostAtOnce };
  });
