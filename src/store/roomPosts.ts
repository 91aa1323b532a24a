import type { Clock } from '../clock.ts';
import { days, instant, type Instant, type MemberId, type StudioId } from '../studio/ids.ts';
import type { Outcome, Turns } from './turns.ts';
import { withoutNulWithin } from './withoutNul.ts';

interface Post<Reply> {
  no: number;
  key: string;
  id: string;
  at: Instant;
  member: MemberId;
  line: string;
  private: boolean;
  reply: Reply;
}

/** The logbook keeps what was logged; what was said about it is only there to scroll back in. */
const postsAreKept = days(7);

/** What was said in one studio's room lately. */
export class RoomPosts<Reply> {
  readonly #turns: Turns;
  readonly #clock: Clock;
  readonly #studio: StudioId;

  constructor(turns: Turns, clock: Clock, studio: StudioId) {
    this.#turns = turns;
    this.#clock = clock;
    this.#studio = studio;
  }

  latest(most: number): Promise<Post<Reply>[]> {
    return this.#turns.write(async ({ db }) => {
      await db
        .deleteFrom('room_posts')
        .where('studio_id', '=', this.#studio)
        .where('at', '<', instant(this.#clock.now() - postsAreKept))
        // The last one stays: numbers go on from it.
        .where('no', '<', ({ selectFrom }) =>
          selectFrom('room_posts as all')
            .where('all.studio_id', '=', this.#studio)
            .select(({ fn }) => fn.max('all.no').as('last')),
        )
        .execute();
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

  add(post: Omit<Post<Reply>, 'no'>): Promise<{ post: Post<Reply>; fresh: boolean }> {
    type Added = { post: Post<Reply>; fresh: boolean };
    return this.#turns.write(async ({ db }): Promise<Outcome<Added>> => {
      const ours = db.selectFrom('room_posts').where('studio_id', '=', this.#studio);
      const kept = await ours.where('key', '=', post.key).selectAll().executeTakeFirst();
      if (kept) return { keep: false, value: { post: this.#post(kept), fresh: false } };
      const last = await ours.orderBy('no', 'desc').limit(1).select('no').executeTakeFirst();
      const clean = withoutNulWithin({ ...post, no: (last?.no ?? 0) + 1 });
      await db
        .insertInto('room_posts')
        .values({
          studio_id: this.#studio,
          no: clean.no,
          key: clean.key,
          id: clean.id,
          at: clean.at,
          member_id: clean.member,
          line: clean.line,
          private: clean.private ? 1 : 0,
          reply: JSON.stringify(clean.reply),
        })
        .execute();
      return { keep: true, value: { post: clean, fresh: true } };
    });
  }

  #post(row: {
    no: number;
    key: string;
    id: string;
    at: Instant;
    member_id: MemberId;
    line: string;
    private: number;
    reply: string;
  }): Post<Reply> {
    const { no, key, id, at, line } = row;
    // Only `add` writes them, and it takes nothing else.
    const reply = JSON.parse(row.reply) as Reply;
    return { no, key, id, at, line, member: row.member_id, private: row.private === 1, reply };
  }
}
