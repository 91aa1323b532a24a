import type { MemberId, Post, Words } from '../ports.ts';
import { insteadOf, keepable } from './keepable.ts';

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
  readonly #words: Words;
  #posts: Post[];

  constructor(posts: Post[], words: Words) {
    this.#posts = posts;
    this.#words = words;
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
      if (post) this.#posts[i] = keepable(post, this.#words);
    }
  }
}

/** After a link: a member's post as the other's. */
export const followed =
  (from: MemberId, into: MemberId) =>
  (post: Post): Post =>
    post.member === from ? { ...post, member: into, key: keyOf(post.key, from, into) } : post;

/** Without forgotten members' words: their own posts are emptied, others' answers cleaned. */
export const erased =
  (members: readonly MemberId[], clean: <T>(kept: T) => T, words: Words) =>
  (post: Post): Post => {
    const { line, reply } = post;
    if (members.includes(post.member))
      return { ...post, line: '', private: true, reply: insteadOf(reply, words) };
    const fresh = { line: clean({ typed: line }).typed, reply: clean(reply) };
    return fresh.line === line && fresh.reply === reply ? post : { ...post, ...fresh };
  };
