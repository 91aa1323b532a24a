import { definedOnly } from '../../definedOnly.ts';
import type { MemberId, Post } from '../ports.ts';
import { keepable } from './keepable.ts';
import type { Elsewhere, Posts, PostsPorts } from './posts.ts';
import { erased, followed, RecentPosts } from './recentPosts.ts';
import { seal } from './sealed.ts';

/** Usually the database tells of other processes' posts at once; looking finds the rest. */
const lookEvery = 1_000;

type Known = Pick<Awaited<ReturnType<PostsPorts['postStore']['news']>>, 'logbook' | 'earlier' | 'sessions'>;

/**
 * The posts of a room that several processes serve. The database numbers them, and each process reads all of them back
 * in that order, its own too: so every phone is told the same ones, whichever process it is connected to.
 */
export class SharedPosts implements Posts {
  readonly recent: RecentPosts;
  readonly #ports: PostsPorts;
  readonly #elsewhere: Elsewhere;
  /** Replies that are shown once, by the post's key, until the post is read back. The database does not have them. */
  readonly #fleeting = new Map<string, Pick<Post, 'reply' | 'fileKey'>>();
  readonly #saying = new Set<Promise<unknown>>();
  readonly #stopLooking: () => void;
  #looking: Promise<void> = Promise.resolve();
  #next: Promise<void> | undefined;
  #known: Known;
  #isWell = true;

  private constructor(
    ports: PostsPorts,
    elsewhere: Elsewhere,
    { recent, known }: { recent: Post[]; known: Known },
  ) {
    this.#ports = ports;
    this.#elsewhere = elsewhere;
    this.recent = new RecentPosts(recent, ports.words);
    this.#known = known;
    const look = () => void this.#lookAgain();
    const deafen = ports.postStore.hear(look);
    const timer = setInterval(look, lookEvery).unref();
    this.#stopLooking = () => {
      deafen();
      clearInterval(timer);
    };
  }

  static async open(ports: PostsPorts, elsewhere: Elsewhere): Promise<SharedPosts> {
    // The counts come first: what changes after them is seen at the next look.
    const known = await ports.postStore.news(Number.MAX_SAFE_INTEGER);
    const recent = await ports.postStore.latest(RecentPosts.most);
    return new SharedPosts(ports, elsewhere, { recent, known });
  }

  async say(said: Omit<Post, 'no'>): Promise<Post> {
    const saying = this.#say(said);
    this.#saying.add(saying);
    try {
      return await saying;
    } finally {
      this.#saying.delete(saying);
    }
  }

  caughtUp(): Promise<void> {
    // A look that is under way may have begun before what the caller knows of.
    this.#next ??= this.#looking
      .catch(() => undefined)
      .then(() => {
        this.#next = undefined;
        return (this.#looking = this.#look());
      });
    return this.#next;
  }

  erase(members: readonly MemberId[], clean: <T>(kept: T) => T): void {
    this.recent.change(erased(members, clean, this.#ports.words));
  }

  follow(from: MemberId, into: MemberId): void {
    this.recent.change(followed(from, into));
  }

  async kept(): Promise<void> {
    await Promise.allSettled(this.#saying);
  }

  stop(): void {
    this.#stopLooking();
  }

  async #say(said: Omit<Post, 'no'>): Promise<Post> {
    const before = this.recent.byKey(said.key);
    if (before) return before;
    const { reply } = said;
    // Its phone may ask another process for the file.
    const closed = reply.fleeting && reply.file && seal(JSON.stringify(reply.file));
    if (reply.fleeting) this.#fleeting.set(said.key, { reply, ...definedOnly({ fileKey: closed?.key }) });
    try {
      const { postStore, words } = this.#ports;
      const no = await postStore.add(keepable(said, words), closed?.sealed);
      // The member was forgotten in the meantime: nothing is sent or stored.
      if (no === undefined) return { ...said, no: this.recent.last() + 1 };
      // Its phone is told in any case; a look that fails is made good by the next.
      await this.caughtUp().catch(() => undefined);
      return this.recent.find(no, said.member) ?? { ...said, no };
    } finally {
      this.#fleeting.delete(said.key);
    }
  }

  async #lookAgain(): Promise<void> {
    try {
      await this.caughtUp();
      this.#isWell = true;
    } catch (err) {
      // Once, and not every second while the server is away.
      if (this.#isWell) this.#ports.log.error({ err }, 'what others said in the room could not be read');
      this.#isWell = false;
    }
  }

  async #look(): Promise<void> {
    const { postStore } = this.#ports;
    for (let more = true; more;) {
      const news = await postStore.news(this.recent.last());
      const { logbook, earlier, sessions } = this.#known;
      if (news.earlier !== earlier) {
        const last = this.recent.last();
        const fresh = await postStore.latest(RecentPosts.most);
        this.recent.replace(fresh.filter(({ no }) => no <= last));
      }
      if (news.logbook !== logbook) this.#elsewhere.logged();
      if (news.sessions !== sessions) this.#elsewhere.sessions();
      this.#known = news;
      for (const post of news.posts) this.recent.push(this.#asSaid(post));
      ({ more } = news);
    }
  }

  #asSaid(post: Post): Post {
    return { ...post, ...this.#fleeting.get(post.key) };
  }
}
