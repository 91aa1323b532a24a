import type { Post, PostShelf } from './ports.ts';

const remembered = 500;

export type Listener = (post: Post) => void;

/** Everything said in the room, in order: told to whoever listens, remembered for whoever comes later. */
export class Posts {
  readonly #shelf: PostShelf;
  readonly #recent: Post[];
  readonly #listeners = new Set<Listener>();

  private constructor(shelf: PostShelf, recent: Post[]) {
    this.#shelf = shelf;
    this.#recent = recent;
  }

  static async open(shelf: PostShelf): Promise<Posts> {
    return new Posts(shelf, await shelf.latest(remembered));
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

  async say(said: Omit<Post, 'no'>): Promise<Post> {
    const { post, fresh } = await this.#shelf.add(said);
    if (!fresh) return post;
    this.#recent.push(post);
    if (this.#recent.length > remembered) this.#recent.shift();
    for (const listen of this.#listeners) listen(post);
    return post;
  }

  listen(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
}

export const maySee = (post: Post, member: string): boolean => !post.private || post.member === member;
