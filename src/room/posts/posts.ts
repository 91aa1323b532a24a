import type { Log } from '../../contract/log.ts';
import type { Reply } from '../../contract/contract.ts';
import type { MemberId, Post, PostStore, RoomPorts } from '../ports.ts';

type PostsPorts = Pick<RoomPorts, 'postStore' | 'log' | 'words'>;

const mostRemembered = 500;
/** Posts are written to disk in batches, this many milliseconds apart. */
const batchMilliseconds = 250;
/**
 * After a crash this many numbers are skipped, so that no number is used twice: phones ask for posts after the last
 * number they saw.
 */
const lostAtMost = 1_000;

const mostFleeting = 4;

export type Listener = (post: Post) => void;

/** All posts in order: sent to listeners, and kept for those who connect later. */
export class Posts {
  readonly #shelf: PostStore;
  readonly #log: Log;
  readonly #shownOnce: Reply['title'];
  #recent: Post[];
  readonly #gone = new Set<MemberId>();
  readonly #listeners = new Set<Listener>();
  #unkept: Post[] = [];
  #keeping: Promise<void> | undefined;
  #next: number;

  private constructor({ postStore, log, words }: PostsPorts, recent: Post[]) {
    this.#shelf = postStore;
    this.#log = log;
    this.#shownOnce = words.desk.shownOnce;
    this.#recent = recent;
    this.#next = (recent.at(-1)?.no ?? -lostAtMost) + lostAtMost + 1;
  }

  static async open(ports: PostsPorts): Promise<Posts> {
    return new Posts(ports, await ports.postStore.latest(mostRemembered));
  }

  /** The posts after a number that a member may see: at most so many of the newest, oldest first. */
  seenBy(member: string, after: number, most: number): Post[] {
    return this.#recent.filter((post) => post.no > after && maySee(post, member)).slice(-most);
  }

  find(no: number, member: string): Post | undefined {
    return this.#recent.find((post) => post.no === no && maySee(post, member));
  }

  byKey(key: string): Post | undefined {
    return this.#recent.findLast((post) => post.key === key);
  }

  /** Posts to everybody who may see it, once for each request. It is written to disk a moment later. */
  say(said: Omit<Post, 'no'>): Post {
    const before = this.byKey(said.key);
    if (before) return before;
    const post = { ...said, no: this.#next };
    // The member was forgotten in the meantime: nothing is sent or stored.
    if (this.#gone.has(said.member)) return post;
    this.#next += 1;
    this.#recent.push(post);
    if (this.#recent.length > mostRemembered) this.#recent.shift();
    this.#letGo();
    this.#unkept.push(post);
    this.#keeping ??= this.#keepSoon();
    for (const listen of this.#listeners) listen(post);
    return post;
  }

  /** Empties forgotten members' posts, and removes their words from others' answers. */
  erase(members: readonly MemberId[], clean: <T>(kept: T) => T): void {
    for (const member of members) this.#gone.add(member);
    this.#change((post) => {
      if (members.includes(post.member)) return this.#emptied(post);
      const { line, reply } = post;
      const fresh = { line: clean({ typed: line }).typed, reply: clean(reply) };
      return fresh.line === line && fresh.reply === reply ? post : { ...post, ...fresh };
    });
  }

  /** After a link: assigns one member's posts to the other. */
  follow(from: MemberId, into: MemberId): void {
    this.#change((post) =>
      post.member === from ? { ...post, member: into, key: keyOf(post.key, from, into) } : post,
    );
  }

  /** Resolves when all posts so far are on disk. */
  async kept(): Promise<void> {
    await this.#keeping;
    await this.#keep();
  }

  listen(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #change(changed: (post: Post) => Post): void {
    const fresh = new Map(this.#recent.map((post) => [post, changed(post)]));
    this.#recent = [...fresh.values()];
    this.#unkept = this.#unkept.map((post) => fresh.get(post) ?? changed(post));
  }

  #emptied(post: Post): Post {
    return { ...post, line: '', private: true, reply: this.#instead(post.reply.kind) };
  }

  #instead(kind: Reply['kind']): Reply {
    return { kind, title: this.#shownOnce, private: true, data: {} };
  }

  async #keepSoon(): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, batchMilliseconds));
    this.#keeping = undefined;
    await this.#keep().catch((error: unknown) =>
      this.#log.error({ err: error }, 'what was said in the room could not be kept'),
    );
  }

  async #keep(): Promise<void> {
    const posts = this.#unkept;
    this.#unkept = [];
    if (posts.length > 0) await this.#shelf.keep(posts.map((post) => this.#keepable(post)));
  }

  /** Replies that are shown once are not written to disk. */
  #keepable(post: Post): Post {
    const { kind, fleeting } = post.reply;
    return fleeting ? { ...post, reply: this.#instead(kind) } : post;
  }

  /** Only the last few of them stay in memory: each may be megabytes. */
  #letGo(): void {
    const fleeting = this.#recent.flatMap(({ reply }, i) => (reply.fleeting ? [i] : []));
    for (const i of fleeting.slice(0, -mostFleeting)) {
      const post = this.#recent[i];
      if (post) this.#recent[i] = this.#keepable(post);
    }
  }
}

export const maySee = (post: Post, member: string): boolean => !post.private || post.member === member;

/** A phone's keys include its member. After a link they are rewritten, so that a repeat is still recognised. */
const keyOf = (key: string, from: MemberId, into: MemberId): string => {
  const theirs = `room:${from}:`;
  return key.startsWith(theirs) ? `room:${into}:${key.slice(theirs.length)}` : key;
};
