import type { MemberId, Post } from '../ports.ts';
import { keepable } from './keepable.ts';
import type { Posts, PostsPorts } from './posts.ts';
import { erased, followed, RecentPosts } from './recentPosts.ts';

/** Posts are written to disk in batches, this many milliseconds apart. */
const batchMilliseconds = 250;
/**
 * After a crash this many numbers are skipped, so that no number is used twice: phones ask for posts after the last
 * number they saw.
 */
const lostAtMost = 1_000;

/** The posts of a room that this process alone serves: numbered here, and written down a moment later. */
export class OwnPosts implements Posts {
  readonly recent: RecentPosts;
  readonly #ports: PostsPorts;
  readonly #gone = new Set<MemberId>();
  #unkept: Post[] = [];
  #keeping: Promise<void> | undefined;
  #next: number;

  private constructor(ports: PostsPorts, recent: Post[]) {
    this.#ports = ports;
    this.recent = new RecentPosts(recent, ports.words);
    this.#next = (recent.at(-1)?.no ?? -lostAtMost) + lostAtMost + 1;
  }

  static async open(ports: PostsPorts): Promise<OwnPosts> {
    return new OwnPosts(ports, await ports.postStore.latest(RecentPosts.most));
  }

  say(said: Omit<Post, 'no'>): Promise<Post> {
    const before = this.recent.byKey(said.key);
    if (before) return Promise.resolve(before);
    const post = { ...said, no: this.#next };
    // The member was forgotten in the meantime: nothing is sent or stored.
    if (this.#gone.has(said.member)) return Promise.resolve(post);
    this.#next += 1;
    this.#unkept.push(post);
    this.#keeping ??= this.#keepSoon();
    this.recent.push(post);
    return Promise.resolve(post);
  }

  caughtUp(): Promise<void> {
    return Promise.resolve();
  }

  erase(members: readonly MemberId[], clean: <T>(kept: T) => T): void {
    for (const member of members) this.#gone.add(member);
    this.#change(erased(members, clean, this.#ports.words));
  }

  follow(from: MemberId, into: MemberId): void {
    this.#change(followed(from, into));
  }

  async kept(): Promise<void> {
    await this.#keeping;
    await this.#keep();
  }

  stop(): void {
    // Nothing goes on by itself.
  }

  #change(changed: (post: Post) => Post): void {
    this.recent.change(changed);
    this.#unkept = this.#unkept.map(changed);
  }

  async #keepSoon(): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, batchMilliseconds));
    this.#keeping = undefined;
    await this.#keep().catch((error: unknown) =>
      this.#ports.log.error({ err: error }, 'what was said in the room could not be kept'),
    );
  }

  async #keep(): Promise<void> {
    const posts = this.#unkept;
    this.#unkept = [];
    const { postStore, words } = this.#ports;
    if (posts.length > 0) await postStore.keep(posts.map((post) => keepable(post, words)));
  }
}
