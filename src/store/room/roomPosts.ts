import type { Clock } from '../../clock.ts';
import { instant, minutes, type StudioId } from '../../studio/ids.ts';
import type { Post, PostStore } from '../../studio/logbook/roomPorts.ts';
import { dropPosts } from '../lines/dropPosts.ts';
import { standsFor } from '../people/standsFor.ts';
import { writeAll, type Engine, type Reading, type Writing } from '../engine/turns.ts';
import { withoutNulWithin } from '../engine/withoutNul.ts';
import type { Tables } from '../migrations/tables.ts';

/** After so many bytes, posts beyond a member's share are deleted without waiting for the hourly cleanup. */
const writtenAtMost = 4 * 1024 * 1024;

const mostNews = 200;

/** Long enough to press a button. */
const sealedIsKept = minutes(10);

/** The latest posts in one studio's room. */
export const roomPosts = <Reply>(
  { turns, hear }: Pick<Engine, 'turns' | 'hear'>,
  clock: Clock,
  studio: StudioId,
): PostStore<Reply> => {
  const scope = { rows: studio };
  let written = 0;

  const postsOf = ({ db }: Reading) => db.selectFrom('room_posts').where('studio_id', '=', studio);

  const insert = async ({ db }: Writing, posts: readonly Post<Reply>[]): Promise<void> => {
    const rows = withoutNulWithin([...posts]).map(({ no, key, id, at, member, line, ...post }) => ({
      studio_id: studio,
      no,
      key,
      id,
      at,
      member_id: member,
      line,
      private: post.private ? 1 : 0,
      reply: JSON.stringify(post.reply),
    }));
    await db
      .insertInto('room_posts')
      .values(rows)
      .onConflict((conflict) => conflict.doNothing())
      .execute();
    written += rows.reduce((sum, { line, reply }) => sum + line.length + reply.length, 0);
    if (written <= writtenAtMost) return;
    await dropPosts(db, clock.now());
    written = 0;
  };

  const postOf = ({ no, key, id, at, line, ...row }: Tables['room_posts']): Post<Reply> => {
    // Only `insert` writes this column, and only replies.
    const reply = JSON.parse(row.reply) as Reply;
    return { no, key, id, at, line, member: row.member_id, private: row.private === 1, reply };
  };

  return {
    isShared: turns.isShared,

    hear: (listener) => hear(studio, listener),

    /** The studio's row is this turn's alone, so numbers become visible in their order, and none is left out. */
    add: (said, sealed) =>
      turns.write<number | undefined>(scope, async (writing) => {
        const { db } = writing;
        const member = await standsFor(db, studio, said.member);
        if (member === undefined) return { keep: false, value: undefined };
        // Linked meanwhile, they repeat the request under their other id.
        const key = said.key.replace(`room:${said.member}:`, `room:${member}:`);
        const known = await postsOf(writing).where('key', '=', key).select('no').executeTakeFirst();
        if (known) return { keep: false, value: known.no };
        const { last } = await postsOf(writing)
          .select(({ fn }) => fn.max<number | null>('no').as('last'))
          .executeTakeFirstOrThrow();
        const no = (last ?? 0) + 1;
        await insert(writing, [{ ...said, key, member, no }]);
        const until = instant(clock.now() + sealedIsKept);
        if (sealed !== undefined)
          await db
            .insertInto('shown_once')
            .values({ studio_id: studio, no, member_id: member, sealed, until })
            .execute();
        await turns.announce(db, studio);
        return { keep: true, value: no };
      }),

    sealed: (no) =>
      turns.read(scope, async ({ db }) => {
        const row = await db
          .selectFrom('shown_once')
          .where(({ and }) => and({ studio_id: studio, no }))
          .where('until', '>', clock.now())
          .select('sealed')
          .executeTakeFirst();
        return row?.sealed;
      }),

    news: (after) =>
      turns.read(scope, async (reading) => {
        const counts = await reading.db
          .selectFrom('studios')
          .where('id', '=', studio)
          .select(['version as logbook', 'posts_changed as earlier', 'sessions_changed as sessions'])
          .executeTakeFirstOrThrow();
        const rows = await postsOf(reading)
          .where('no', '>', after)
          .orderBy('no')
          .limit(mostNews)
          .selectAll()
          .execute();
        return { posts: rows.map(postOf), more: rows.length === mostNews, ...counts };
      }),

    latest: (most) =>
      writeAll(turns, scope, async (writing) => {
        await dropPosts(writing.db, clock.now());
        const rows = await postsOf(writing).orderBy('no', 'desc').limit(most).selectAll().execute();
        return rows.reverse().map(postOf);
      }),

    keep: (posts) => writeAll(turns, scope, (writing) => insert(writing, posts)),
  };
};
