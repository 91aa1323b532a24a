import type { WirePost } from '../wire.ts';
import { phoneNow } from './clock.ts';
import { freshId, post } from './net.ts';
import { WaitingLines, type Sending, type Waiting } from './waitingLines.ts';

interface Hooks {
  member: string;
  waiting(item: Waiting): void;
  sent(post: WirePost): void;
  dropped(id: string): void;
  signedOut(): void;
}

/** No connection, too fast, or a server that is not there for now; 500 is a bug, which would come again. */
const passes = (status: number): boolean => status === 0 || status === 429 || status > 500;

/** Lines on their way. Each has its own id and stays here until the room has answered it: sent twice, it is logged once. */
export class Outbox {
  readonly #hooks: Hooks;
  readonly #lines = new WaitingLines();
  readonly #closing = new AbortController();
  #going = false;
  #pause = 500;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(hooks: Hooks) {
    this.#hooks = hooks;
    this.#lines.listen((id, item) => {
      if (!item) hooks.dropped(id);
      else if (item.member === hooks.member) hooks.waiting(item);
    }, this.#closing.signal);
  }

  /** What this member sent and got no answer to yet, in any tab, also before a reload. */
  mine(): Waiting[] {
    return this.#lines.all().filter(({ member }) => member === this.#hooks.member);
  }

  add(sending: Sending): void {
    this.#put({ ...sending, id: freshId(), member: this.#hooks.member, since: phoneNow() });
    void this.go();
  }

  /** Its writer wants a line that is held to be sent, as old as it is. */
  again({ held, ...item }: Waiting): void {
    this.#put(held?.why === 'too-old' ? { ...item, sure: true } : item);
    void this.go();
  }

  drop(id: string): void {
    this.#lines.drop(id);
    this.#hooks.dropped(id);
  }

  /** Somebody else is signed in from now on. */
  close(): void {
    this.#closing.abort();
    clearTimeout(this.#timer);
  }

  /** Sends in order, one at a time; goes on when the connection is back. */
  async go(): Promise<void> {
    if (this.#going) return;
    this.#going = true;
    clearTimeout(this.#timer);
    try {
      for (let item = this.#next(); item; item = this.#next()) if (!(await this.#send(item))) return;
    } finally {
      this.#going = false;
    }
  }

  #next(): Waiting | undefined {
    return this.#closing.signal.aborted ? undefined : this.mine().find(({ held }) => !held);
  }

  /** Whether to go on with the next. */
  async #send(item: Waiting): Promise<boolean> {
    const { since, ...sending } = item;
    const waited = Math.max(0, Math.round(phoneNow() - since));
    const answer = await post<WirePost>('/api/say', { ...sending, waited });
    if (answer.ok) {
      this.#lines.drop(item.id);
      this.#pause = 500;
      this.#hooks.sent(answer.value);
      return true;
    }
    if (answer.status === 401) this.#hooks.signedOut();
    else if (passes(answer.status)) this.#later(answer);
    else {
      const { status, said } = answer;
      this.#put({ ...item, held: status === 409 ? { why: 'too-old' } : { why: 'refused', said } });
      return true;
    }
    return false;
  }

  #put(item: Waiting): void {
    this.#lines.put(item);
    this.#hooks.waiting(item);
  }

  #later(answer: { seconds?: number } | object): void {
    const seconds = 'seconds' in answer ? answer.seconds : undefined;
    const pause = seconds === undefined ? this.#pause : seconds * 1000;
    this.#pause = Math.min(this.#pause * 2, 15_000);
    this.#timer = setTimeout(() => void this.go(), pause);
  }
}
