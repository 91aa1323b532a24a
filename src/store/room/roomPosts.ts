import type { Clock } from '../../clock.ts';
import type { StudioId } from '../../studio/ids.ts';
import type { Post, PostStore } from '../../studio/logbook/roomPorts.ts';
import { dropPosts } from '../lines/dropPosts.ts';
import type { Turns } from '../engine/turns.ts';
import { withoutNulWithin } from '../engine/withoutNul.ts';
import type { Tables } from '../migrations/tables.ts';

/** After so many bytes, posts beyond a member's share are deleted without waiting for the hourly cleanup. */
const writtenAtMost = 4 * 1024 * 1024;

/** The latest posts in one studio's room. */
export class RoomPosts<Reply> implements PostStore<Reply> {
  readonly #turns: Turns;
  readonly #clock: Clock;
  readonly #studio: StudioId;
  #written = 0;

  constructor(turns: Turns, clock: Clock, studio: StudioId) {
    this.#turns = turns;
    this.#clock = clock;
    this.#studio = studio;
  }

  latest(most: number): Promise<Post<Reply>[]> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      await dropPosts(db, this.#clock.now());
      const rows = await db
        .selectFrom('room_posts')
        .where('studio_id', '=', this.#studio)
        .orderBy('no', 'desc')
        .limit(most)
        .selectAll()
        .execute();
      return { keep: true, value: rows.reverse().map((row) => this.#post(row)) };
    });
  }

  keep(posts: readonly Post<Reply>[]): Promise<void> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      const rows = withoutNulWithin([...posts]).map((post) => ({
        studio_id: this.#studio,
        no: post.no,
        key: post.key,
        id: post.id,
        at: post.at,
        member_id: post.member,
        line: post.line,
        private: post.private ? 1 : 0,
        reply: JSON.stringify(post.reply),
      }));
      await db
        .insertInto('room_posts')
        .values(rows)
        .onConflict((conflict) => conflict.doNothing())
        .execute();
      this.#written += rows.reduce((sum, { line, reply }) => sum + line.length + reply.length, 0);
      if (this.#written > writtenAtMost) {
        await dropPosts(db, this.#clock.now());
        this.#written = 0;
      }
      return { keep: true, value: undefined };
    });
  }

  #post(row: Tables['room_posts']): Post<Reply> {
    const { no, key, id, at, line } = row;
    // Only `keep` writes this column, and only replies.
    const reply = JSON.parse(row.reply) as Reply;
    return { no, key, id, at, line, member: row.member_id, private: row.private === 1, reply };
  }
}
