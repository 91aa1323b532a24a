import type { Instant, MemberId } from '../studio/ids.ts';

/** Far more than anybody does at the buckets, and few enough that nobody fills a disk. */
const usually = 2_000;
const day = 24 * 3_600_000;

/** How much each member has logged on a day (of UTC): no one of them can fill the disk that the others log on. */
export class DailyLimit {
  readonly most: number;
  #day = 0;
  readonly #logged = new Map<MemberId, number>();

  constructor(most = usually) {
    this.most = most;
  }

  isReached(member: MemberId, now: Instant): boolean {
    const today = Math.floor(now / day);
    if (today !== this.#day) this.#logged.clear();
    this.#day = today;
    return (this.#logged.get(member) ?? 0) >= this.most;
  }

  count(member: MemberId): void {
    this.#logged.set(member, (this.#logged.get(member) ?? 0) + 1);
  }
}
