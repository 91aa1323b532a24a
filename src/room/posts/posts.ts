import type { Log } from '../../contract/log.ts';
import type { Reply } from '../../contract/contract.ts';
import type { MemberId, Post, PostShelf, RoomPorts } from '../ports.ts';

type PostsPorts = Pick<RoomPorts, 'shelf' | 'log' | 'words'>;

const remembered = 500;
/** What was said meanwhile goes onto the shelf together: one write to the disk for all of it. */
const together = 250;
/** Numbers that a crash may have lost are never given again: a phone asks for what comes after the last it saw. */
const lostAtMost = 1_000;

const mostFleeting = 4;

export type Listener = (post: Post) => void;

/** Everything said in the room, in order: told to whoever listens, remembered for whoever comes later. */
export class Posts {
  readonly #shelf: PostShelf;
  readonly #log: Log;
  readonly #shownOnce: Reply['title'];
  #recent: Post[];
  readonly #gone = new Set<MemberId>();
  readonly #listeners = new Set<Listener>();
  #unkept: Post[] = [];
  #keeping: Promise<void> | undefined;
  #next: number;

  private constructor({ shelf, log, words }: PostsPorts, recent: Post[]) {
    this.#shelf = shelf;
    this.#log = log;
    this.#shownOnce = words.desk.shownOnce;
    this.#recent = recent;
    this.#next = (recent.at(-1)?.no ?? -lostAtMost) + lostAtMost + 1;
  }

  static async open(ports: PostsPorts): Promise<Posts> {
    return new Posts(ports, await ports.shelf.latest(remembered));
  }

  /** What a member may see after a number, oldest first; at most so many of the newest. */
  seenBy(member: string, after: number, most: number): Post[] {
    return this.#recent.filter((post) => post.no > after && maySee(post, member)).slice(-most);
  }

  find(no: number, member: string): Post | undefined {
    return this.#recent.find((post) => post.no === no && maySee(post, member));
  }

  byKey(key: string): Post | undefined {
    return this.#recent.findLast((post) => post.key === key);
  }

  /** Says it to everybody who may hear it; the same request is said once. It is on the disk a moment later. */
  say(said: Omit<Post, 'no'>): Post {
    const before = this.byKey(said.key);
    if (before) return before;
    const post = { ...said, no: this.#next };
    // Said while they were being forgotten: nobody hears it, and nothing of it is kept.
    if (this.#gone.has(said.member)) return post;
    this.#next += 1;
    this.#recent.push(post);
    if (this.#recent.length > remembered) this.#recent.shift();
    this.#letGo();
    this.#unkept.push(post);
    this.#keeping ??= this.#keepSoon();
    for (const listen of this.#listeners) listen(post);
    return post;
  }

  /** Empties what forgotten members said, and takes their words out of what others were answered. */
  erase(members: readonly MemberId[], clean: <T>(kept: T) => T): void {
    for (const member of members) this.#gone.add(member);
    this.#change((post) => {
      if (members.includes(post.member)) return this.#emptied(post);
      const { line, reply } = post;
      const fresh = { line: clean({ typed: line }).typed, reply: clean(reply) };
      return fresh.line === line && fresh.reply === reply ? post : { ...post, ...fresh };
    });
  }

  /** What was said as one member is another's from now on: they are one. */
  follow(from: MemberId, into: MemberId): void {
    this.#change((post) =>
      post.member === from ? { ...post, member: into, key: keyOf(post.key, from, into) } : post,
    );
  }

  /** When everything said so far is on the disk. */
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
    await new Promise((resolve) => setTimeout(resolve, together));
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

  /** What is shown once never gets onto the disk. */
  #keepable(post: Post): Post {
    const { kind, fleeting } = post.reply;
    return fleeting ? { ...post, reply: this.#instead(kind) } : post;
  }

  /** Of what is shown once only the last few stay at hand: each may be megabytes. */
  #letGo(): void {
    const fleeting = this.#recent.flatMap(({ reply }, i) => (reply.fleeting ? [i] : []));
    for (const i of fleeting.slice(0, -mostFleeting)) {
      const post = this.#recent[i];
      if (post) this.#recent[i] = this.#keepable(post);
    }
  }
}

export const maySee = (post: Post, member: string): boolean => !post.private || post.member === member;

/** A phone's lines go under its member: sent again after the two are one, they are still the same lines. */
const keyOf = (key: string, from: MemberId, into: MemberId): string => {
  const theirs = `room:${from}:`;
  return key.startsWith(theirs) ? `room:${into}:${key.slice(theirs.length)}` : key;
};
