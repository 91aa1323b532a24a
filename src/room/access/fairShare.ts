/** Milliseconds of work that a member has to their credit: so many at once, so many more in a second. */
const atOnce = 400;
const inASecond = 30;
/** What costs less holds nobody up; what costs more than a moment holds everybody up, and counts for more. */
const free = 10;
const moment = 50;
const mostCharged = 300;
/** So many requests of one member wait for their turn, and so long. */
const mostWaiting = 20;
const longestWait = 2_000;
/** As many members as a studio ever has. */
const mostMembers = 10_000;

interface Share {
  credit: number;
  at: number;
  waiting: number;
  turn: Promise<unknown>;
}

/** What tells the time and lets it pass: a test has its own. */
export interface Waiting {
  now(): number;
  /** Milliseconds that the processor has worked for this program: what other programs take of it is nobody's fault here. */
  worked(): number;
  pause(milliseconds: number): Promise<void>;
}

const really: Waiting = {
  now: () => performance.now(),
  worked: () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1_000;
  },
  pause: (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds)),
};

export type Shared<T> = { ok: true; value: T } | { ok: false; seconds: number };

const charge = (took: number): number =>
  Math.min(mostCharged, Math.max(0, took - free) + 2 * Math.max(0, took - moment));

/**
 * The room does one thing at a time. A member's requests go one after another, and whose requests cost much waits
 * until what they cost has been made good: whatever somebody asks for, the others are answered as before.
 */
export class FairShare {
  readonly #shares = new Map<string, Share>();
  readonly #time: Waiting;
  #underWay = 0;

  constructor(time: Waiting = really) {
    this.#time = time;
  }

  /** Does the work when it is the member's turn; otherwise answers in how many seconds to ask again. */
  async run<T>(member: string, work: () => Promise<T>): Promise<Shared<T>> {
    const share = this.#shareOf(member);
    if (share.waiting >= mostWaiting) return { ok: false, seconds: 1 };
    share.waiting += 1;
    const mine = share.turn.then(() => this.#inTurn(share, work));
    share.turn = mine.catch(() => undefined);
    try {
      return await mine;
    } finally {
      share.waiting -= 1;
    }
  }

  async #inTurn<T>(share: Share, work: () => Promise<T>): Promise<Shared<T>> {
    this.#earn(share);
    const owed = Math.max(0, -share.credit / inASecond) * 1_000;
    if (owed > longestWait) return { ok: false, seconds: Math.ceil(owed / 1_000) };
    if (owed > 0) await this.#time.pause(owed);
    this.#earn(share);
    this.#underWay += 1;
    // What is under way at once shares what was worked meanwhile. Whoever comes while one holds the room up is not begun.
    const together = this.#underWay;
    const before = this.#time.worked();
    try {
      return { ok: true, value: await work() };
    } finally {
      this.#underWay -= 1;
      share.credit -= charge((this.#time.worked() - before) / together);
    }
  }

  #earn(share: Share): void {
    const now = this.#time.now();
    share.credit = Math.min(atOnce, share.credit + (Math.max(0, now - share.at) / 1_000) * inASecond);
    share.at = now;
  }

  #shareOf(member: string): Share {
    const known = this.#shares.get(member);
    if (known) return known;
    // Whoever waits holds on to their own; the others begin with the full credit anyway.
    if (this.#shares.size >= mostMembers) this.#shares.clear();
    const share = { credit: atOnce, at: this.#time.now(), waiting: 0, turn: Promise.resolve() };
    this.#shares.set(member, share);
    return share;
  }
}
