/** Each member's credit, in milliseconds of work: the most that it can hold, and how much is added every second. */
const mostCredit = 400;
const creditPerSecond = 30;
/** Requests cheaper than this are free. Requests longer than a moment delay everybody, so they count for more. */
const freeMilliseconds = 10;
const longMilliseconds = 50;
const mostCharged = 300;
/** How many requests of one member may wait, and for how long. */
const mostWaiting = 20;
const longestWait = 2_000;
/** More members than any studio has. */
const mostMembers = 10_000;

interface Share {
  credit: number;
  at: number;
  waiting: number;
  turn: Promise<unknown>;
}

/** The clock and the pause, so that a test can supply its own. */
export interface WorkClock {
  now(): number;
  /** CPU time that this program has used, in milliseconds. Other programs' load is not charged to members. */
  worked(): number;
  pause(milliseconds: number): Promise<void>;
}

const systemTime: WorkClock = {
  now: () => performance.now(),
  worked: () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1_000;
  },
  pause: (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds)),
};

export type Shared<T> = { ok: true; value: T } | { ok: false; seconds: number };

const charge = (took: number): number =>
  Math.min(mostCharged, Math.max(0, took - freeMilliseconds) + 2 * Math.max(0, took - longMilliseconds));

/**
 * Fair queueing: the room handles one request at a time. A member's requests run one after another, and a member with
 * costly requests waits until their credit is restored. Other members are served as before.
 */
export class FairShare {
  readonly #shares = new Map<string, Share>();
  readonly #time: WorkClock;
  #underWay = 0;

  constructor(time: WorkClock = systemTime) {
    this.#time = time;
  }

  /** Runs the work when it is the member's turn; otherwise returns in how many seconds to try again. */
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
    const owed = Math.max(0, -share.credit / creditPerSecond) * 1_000;
    if (owed > longestWait) return { ok: false, seconds: Math.ceil(owed / 1_000) };
    if (owed > 0) await this.#time.pause(owed);
    this.#earn(share);
    this.#underWay += 1;
    // Requests that run at the same time share the CPU time used meanwhile. Nothing new starts while a long request is
    // running.
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
    share.credit = Math.min(
      mostCredit,
      share.credit + (Math.max(0, now - share.at) / 1_000) * creditPerSecond,
    );
    share.at = now;
  }

  #shareOf(member: string): Share {
    const known = this.#shares.get(member);
    if (known) return known;
    // Members who are waiting keep their entry. The others can be dropped: they would start with full credit.
    if (this.#shares.size >= mostMembers) this.#shares.clear();
    const share = { credit: mostCredit, at: this.#time.now(), waiting: 0, turn: Promise.resolve() };
    this.#shares.set(member, share);
    return share;
  }
}
