import type { MemberId, Post } from '../ports.ts';

const most = 500;
const mostFleeting = 4;

export type Listener = (post: Post) => void;

export const maySee = (post: Post, member: string): boolean => !post.private || post.member === member;

/** A phone's keys include its member. After a link they are rewritten, so that a repeat is still recognised. */
const keyOf = (key: string, from: MemberId, into: MemberId): string => {
  const theirs = `room:${from}:`;
  return key.startsWith(theirs) ? `room:${into}:${key.slice(theirs.length)}` : key;
};

/** The latest posts in memory, in order, and whoever listens for more. */
export class RecentPosts {
  static readonly most = most;
  readonly #listeners = new Set<Listener>();
  /** What is kept of a post whose reply is shown once. */
  readonly #keepable: (post: Post) => Post;
  #posts: Post[];

  constructor(posts: Post[], keepable: (post: Post) => Post) {
    this.#posts = posts;
    this.#keepable = keepable;
  }

  last(): number {
    return this.#posts.at(-1)?.no ?? 0;
  }

  /** The posts after a number that a member may see: at most so many of the newest, oldest first. */
  seenBy(member: string, after: number, many: number): Post[] {
    return this.#posts.filter((post) => post.no > after && maySee(post, member)).slice(-many);
  }

  find(no: number, member: string): Post | undefined {
    return this.#posts.find((post) => post.no === no && maySee(post, member));
  }

  byKey(key: string): Post | undefined {
    return this.#posts.findLast((post) => post.key === key);
  }

  listen(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  push(post: Post): void {
    this.#posts.push(post);
    if (this.#posts.length > most) this.#posts.shift();
    this.#letGo();
    for (const listen of this.#listeners) listen(post);
  }

  replace(posts: Post[]): void {
    this.#posts = posts;
  }

  /** Changes posts that were sent already: whoever comes later sees them so. */
  change(changed: (post: Post) => Post): void {
    this.#posts = this.#posts.map(changed);
  }

  /** Only the last few replies that are shown once stay in memory: each may be megabytes. */
  #letGo(): void {
    const fleeting = this.#posts.flatMap(({ reply }, i) => (reply.fleeting ? [i] : []));
    for (const i of fleeting.slice(0, -mostFleeting)) {
      const post = this.#posts[i];
      if (post) this.#posts[i] = this.#keepable(post);
    }
  }
}

/** After a link: a member's post as the other's. */
export const followed =
  (from: MemberId, into: MemberId) =>
  (post: Post): Post =>
    post.member === from ? { ...post, member: into, key: keyOf(post.key, from, into) } : post;

/** Without forgotten members' words: their own posts are emptied by `emptied`, others' answers cleaned. */
export const erased =
  (members: readonly MemberId[], clean: <T>(kept: T) => T, emptied: (post: Post) => Post) =>
  (post: Post): Post => {
    if (members.includes(post.member)) return emptied(post);
    const { line, reply } = post;
    const fresh = { line: clean({ typed: line }).typed, reply: clean(reply) };
    return fresh.line === line && fresh.reply === reply ? post : { ...post, ...fresh };
  };
