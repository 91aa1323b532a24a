import { sql, type Transaction } from 'kysely';
import { days, instant, type Instant } from '../../studio/ids.ts';
import type { Tables } from '../migrations/tables.ts';

/** The logbook keeps what was logged; what was said about it is only there to scroll back in. */
const postsAreKept = days(7);
/** What somebody asked for themselves can be asked again; a reminder cannot. */
const privateAreKept = days(1);
const mostOfMember = 16 * 1024 * 1024;

/** Drops what was said in the rooms too long ago, and of each member what is beyond their share. The last of each room stays: numbers go on from it. */
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
        ) where held > ${mostOfMember}
      )`,
    )
    .executeTakeFirst();
  return old.numDeletedRows + beyond.numDeletedRows;
};
