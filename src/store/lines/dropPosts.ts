import { sql, type Transaction } from 'kysely';
import { days, instant, type Instant } from '../../studio/ids.ts';
import type { Tables } from '../migrations/tables.ts';

/** Posts are only there to scroll back in; the logbook keeps what was logged. */
const postsAreKept = days(7);
/** Private answers can be asked for again, so they expire sooner. Reminders cannot, so they stay. */
const privateAreKept = days(1);
const mostOfMember = 16 * 1024 * 1024;

/**
 * Deletes old posts, and each member's posts beyond their share. The last post of a room stays, because the next
 * number follows from it.
 */
export const dropPosts = async (db: Transaction<Tables>, now: Instant): Promise<bigint> => {
  const notLast = sql<boolean>`no < (select max(every.no) from room_posts as every where every.studio_id = room_posts.studio_id)`;
  const old = await db
    .deleteFrom('room_posts')
    .where(notLast)
    .where(({ or, and, eb }) =>
      or([
        eb('at', '<', instant(now - postsAreKept)),
        and([
          eb('at', '<', instant(now - privateAreKept)),
          eb('private', '=', 1),
          eb('key', 'not like', 'room:reminder:%'),
        ]),
      ]),
    )
    .executeTakeFirst();
  const beyond = await db
    .deleteFrom('room_posts')
    .where(notLast)
    .where(
      sql<boolean>`(studio_id, no) in (
        select studio_id, no from (
          select studio_id, no, sum(octet_length(reply) + octet_length(line))
            over (partition by studio_id, member_id order by no desc) as held
          from room_posts
        ) as counted where held > ${mostOfMember}
      )`,
    )
    .executeTakeFirst();
  return old.numDeletedRows + beyond.numDeletedRows;
};
