import type { Clock } from '../../clock.ts';
import { instant, minutes, type StudioId } from '../../studio/ids.ts';
import type { Post, PostStore, RoomNews } from '../../studio/logbook/roomPorts.ts';
import { dropPosts } from '../lines/dropPosts.ts';
import { standsFor } from '../people/standsFor.ts';
import type { Engine, Turns, Writing } from '../engine/turns.ts';
import { withoutNulWithin } from '../engine/withoutNul.ts';
import type { Tables } from '../migrations/tables.ts';

/** After so many bytes, posts beyond a member's share are deleted without waiting for the hourly cleanup. */
const writtenAtMost = 4 * 1024 * 1024;

const mostNews = 200;

/** Long enough to press a button. */
const sealedIsKept = minutes(10);

/** The latest posts in one studio's room. */
export class RoomPosts<Reply> implements PostStore<Reply> {
  readonly #turns: Turns;
  readonly #clock: Clock;
  readonly #studio: StudioId;
  readonly #hear: Engine['hear'];
  #written = 0;

  constructor({ turns, hear }: Pick<Engine, 'turns' | 'hear'>, clock: Clock, studio: StudioId) {
    this.#turns = turns;
    this.#hear = hear;
    this.#clock = clock;
    this.#studio = studio;
  }

  get isShared(): boolean {
    return this.#turns.isShared;
  }

  hear(listener: () => void): () => void {
    return this.#hear(this.#studio, listener);
  }

  /** The studio's row is this turn's alone, so numbers become visible in their order, and none is left out. */
  add(said: Omit<Post<Reply>, 'no'>, sealed?: string): Promise<number | undefined> {
    const studio = this.#studio;
    return this.#turns.write({ rows: studio }, async ({ db }) => {
      const member = await standsFor(db, studio, said.member);
      if (member === undefined) return { keep: false, value: undefined };
      // Linked meanwhile, they repeat the request under their other id.
      const key = said.key.replace(`room:${said.member}:`, `room:${member}:`);
      const posts = db.selectFrom('room_posts').where('studio_id', '=', studio);
      const known = await posts.where('key', '=', key).select('no').executeTakeFirst();
      if (known) return { keep: false, value: known.no };
      const { last } = await posts
        .select(({ fn }) => fn.max<number | null>('no').as('last'))
        .executeTakeFirstOrThrow();
      const no = (last ?? 0) + 1;
      await this.#insert(db, [{ ...said, key, member, no }]);
      const until = instant(this.#clock.now() + sealedIsKept);
      if (sealed !== undefined)
        await db
          .insertInto('shown_once')
          .values({ studio_id: studio, no, member_id: member, sealed, until })
          .execute();
      await this.#turns.announce(db, studio);
      return { keep: true, value: no };
    });
  }

  sealed(no: number): Promise<string | undefined> {
    return this.#turns.read({ rows: this.#studio }, async ({ db }) => {
      const row = await db
        .selectFrom('shown_once')
        .where('studio_id', '=', this.#studio)
        .where('no', '=', no)
        .where('until', '>', this.#clock.now())
        .select('sealed')
        .executeTakeFirst();
      return row?.sealed;
    });
  }

  news(after: number): Promise<RoomNews<Reply>> {
    return this.#turns.read({ rows: this.#studio }, async ({ db }) => {
      const counts = await db
        .selectFrom('studios')
        .where('id', '=', this.#studio)
        .select(['version', 'posts_changed', 'sessions_changed'])
        .executeTakeFirstOrThrow();
      const rows = await db
        .selectFrom('room_posts')
        .where('studio_id', '=', this.#studio)
        .where('no', '>', after)
        .orderBy('no')
        .limit(mostNews)
        .selectAll()
        .execute();
      return {
        posts: rows.map((row) => this.#post(row)),
        more: rows.length === mostNews,
        logbook: counts.version,
        earlier: counts.posts_changed,
        sessions: counts.sessions_changed,
      };
    });
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
      await this.#insert(db, posts);
      return { keep: true, value: undefined };
    });
  }

  async #insert(db: Writing['db'], posts: readonly Post<Reply>[]): Promise<void> {
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
    if (this.#written <= writtenAtMost) return;
    await dropPosts(db, this.#clock.now());
    this.#written = 0;
  }

  #post(row: Tables['room_posts']): Post<Reply> {
    const { no, key, id, at, line } = row;
    // Only `keep` writes this column, and only replies.
    const reply = JSON.parse(row.reply) as Reply;
    return { no, key, id, at, line, member: row.member_id, private: row.private === 1, reply };
  }
}
