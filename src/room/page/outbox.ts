import type { WirePost } from '../wire.ts';
import { phoneNow } from './browser/clock.ts';
import { GrowingPause } from './browser/growingPause.ts';
import { freshId, post } from './browser/net.ts';
import { WaitingLines, type Sending, type Waiting } from './waitingLines.ts';

interface Hooks {
  member: string;
  waiting(item: Waiting): void;
  sent(post: WirePost): void;
  dropped(id: string): void;
  signedOut(): void;
}

/** Temporary failures: no connection, rate limit, server unavailable. A 500 is a bug and would happen again, and a full disk (507) has to be told. */
const isTemporary = (status: number): boolean =>
  status === 0 || status === 429 || (status > 500 && status !== 507);

/**
 * Lines that are being sent. Each keeps its idempotency key until the room answers, so that a line sent twice is logged
 * once.
 */
export class Outbox {
  readonly #hooks: Hooks;
  readonly #lines = new WaitingLines();
  readonly #closing = new AbortController();
  #going = false;
  readonly #pause = new GrowingPause();
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(hooks: Hooks) {
    this.#hooks = hooks;
    this.#lines.listen((id, item) => {
      if (!item) hooks.dropped(id);
      else if (item.member === hooks.member) hooks.waiting(item);
    }, this.#closing.signal);
  }

  /** This member's unanswered lines, from all tabs and from before a reload. */
  mine(): Waiting[] {
    return this.#lines.all().filter(({ member }) => member === this.#hooks.member);
  }

  add(sending: Sending): void {
    this.#put({ ...sending, id: freshId(), member: this.#hooks.member, since: phoneNow() });
    this.#goUnlessPausing();
  }

  /** Sends a held line after its author has agreed, with its original time. */
  again({ held, ...item }: Waiting): void {
    this.#put(held?.why === 'too-old' ? { ...item, sure: true } : item);
    this.#goUnlessPausing();
  }

  drop(id: string): void {
    this.#lines.drop(id);
    this.#hooks.dropped(id);
  }

  close(): void {
    this.#closing.abort();
    this.#stopWaiting();
  }

  /** Sends in order, one at a time; resumes when the connection returns. */
  async go(): Promise<void> {
    if (this.#going) return;
    this.#going = true;
    this.#stopWaiting();
    try {
      for (let item = this.#next(); item; item = this.#next()) if (!(await this.#send(item))) return;
    } finally {
      this.#going = false;
    }
  }

  #next(): Waiting | undefined {
    return this.#closing.signal.aborted ? undefined : this.mine().find(({ held }) => !held);
  }

  /** Returns whether to continue with the next line. */
  async #send(item: Waiting): Promise<boolean> {
    const { since, ...sending } = item;
    const waited = Math.max(0, Math.round(phoneNow() - since));
    const answer = await post<WirePost>('/api/say', { ...sending, waited });
    if (answer.ok) {
      this.#lines.drop(item.id);
      this.#pause.over();
      this.#hooks.sent(answer.value);
      // Pressed before, and answered then.
      if (answer.value.id !== item.id) this.#hooks.dropped(item.id);
      return true;
    }
    if (answer.status === 401) this.#hooks.signedOut();
    else if (isTemporary(answer.status)) this.#later(answer);
    else {
      const { status, said } = answer;
      this.#put({ ...item, held: status === 409 ? { why: 'too-old' } : { why: 'refused', said } });
      if (status < 500) return true;
      // A bug may meet the next line too: it is tried, but not at once.
      this.#later(answer);
    }
    return false;
  }

  #put(item: Waiting): void {
    this.#lines.put(item);
    this.#hooks.waiting(item);
  }

  #later({ seconds = 0 }: { seconds?: number | undefined }): void {
    const pause = Math.max(this.#pause.next(), seconds * 1000);
    this.#timer = setTimeout(() => void this.go(), pause);
  }

  #goUnlessPausing(): void {
    if (this.#timer === undefined) void this.go();
  }

  #stopWaiting(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
  }
}
