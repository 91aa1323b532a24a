import type { WirePost } from '../wire.ts';
import { remember } from './dom.ts';
import { freshId, post } from './net.ts';
import { serverNow } from './text.ts';

export type Sending = { line: string } | { path: string[]; typed: Record<string, string> };
export type Waiting = Sending & { id: string; member: string; since: number };

interface Hooks {
  member(): string | undefined;
  waiting(item: Waiting): void;
  sent(item: Waiting, post: WirePost): void;
  refused(item: Waiting, said: string): void;
  signedOut(): void;
}

const slot = 'room.outbox';
const isWaiting = (value: unknown): value is Waiting =>
  typeof value === 'object' && value !== null && 'id' in value && 'member' in value && 'since' in value;

const load = (): Waiting[] => {
  try {
    const stored: unknown = JSON.parse(remember.get(slot) ?? '[]');
    return Array.isArray(stored) ? stored.filter(isWaiting) : [];
  } catch {
    return [];
  }
};

/** Lines on their way. Each has its own id and stays here until the room has answered it: sent twice, it is logged once. */
export class Outbox {
  readonly #hooks: Hooks;
  #items = load();
  #going = false;
  #pause = 500;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(hooks: Hooks) {
    this.#hooks = hooks;
  }

  /** What this member sent and got no answer to yet, also before a reload. */
  mine(): Waiting[] {
    return this.#items.filter(({ member }) => member === this.#hooks.member());
  }

  add(sending: Sending): void {
    const member = this.#hooks.member();
    if (member === undefined) return;
    const item: Waiting = { ...sending, id: freshId(), member, since: serverNow() };
    this.#items.push(item);
    this.#save();
    this.#hooks.waiting(item);
    void this.go();
  }

  drop(id: string): void {
    this.#items = this.#items.filter((item) => item.id !== id);
    this.#save();
  }

  /** Sends in order, one at a time; goes on when the connection is back. */
  async go(): Promise<void> {
    if (this.#going) return;
    this.#going = true;
    clearTimeout(this.#timer);
    try {
      for (let item = this.mine()[0]; item; item = this.mine()[0]) {
        const { since, member: _member, ...sending } = item;
        const waited = serverNow() - since;
        const answer = await post<WirePost>('/api/say', { ...sending, waited: waited > 5_000 ? waited : 0 });
        if (answer.ok) {
          this.drop(item.id);
          this.#pause = 500;
          this.#hooks.sent(item, answer.value);
        } else if (answer.status === 401) {
          this.#hooks.signedOut();
          return;
        } else if (answer.status === 0 || answer.status === 429 || answer.status >= 500) {
          this.#later(
            'seconds' in answer && answer.seconds !== undefined ? answer.seconds * 1000 : this.#pause,
          );
          return;
        } else {
          this.drop(item.id);
          this.#hooks.refused(item, answer.said);
        }
      }
    } finally {
      this.#going = false;
    }
  }

  #later(milliseconds: number): void {
    this.#pause = Math.min(this.#pause * 2, 15_000);
    this.#timer = setTimeout(() => void this.go(), milliseconds);
  }

  #save(): void {
    remember.set(slot, this.#items.length === 0 ? undefined : JSON.stringify(this.#items));
  }
}
