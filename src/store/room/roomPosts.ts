import type { Clock } from '../../clock.ts';
import { days, instant, type Instant, type MemberId, type StudioId } from '../../studio/ids.ts';
import type { TransactionQueue } from '../engine/transactionQueue.ts';
import { withoutNulWithin } from '../engine/withoutNul.ts';

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
  readonly #turns: TransactionQueue;
  readonly #clock: Clock;
  readonly #studio: StudioId;

  constructor(turns: TransactionQueue, clock: Clock, studio: StudioId) {
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

  keep(posts: readonly Post<Reply>[]): Promise<void> {
    return this.#turns.write(async ({ db }) => {
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
      return { keep: true, value: undefined };
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
    // Only `keep` writes them, and it takes nothing else.
    const reply = JSON.parse(row.reply) as Reply;
    return { no, key, id, at, line, member: row.member_id, private: row.private === 1, reply };
  }
}
