const mostBuckets = 20_000;

/** A token bucket for each key: refill rate and burst. */
export class TokenBucket {
  readonly #perSecond: number;
  readonly #atOnce: number;
  readonly #left = new Map<string, { tokens: number; at: number }>();

  constructor(perSecond: number, atOnce: number) {
    this.#perSecond = perSecond;
    this.#atOnce = atOnce;
  }

  /** Takes a token for the key; otherwise returns the seconds until the next one. */
  take(key: string, now: number): { ok: true } | { ok: false; seconds: number } {
    const held = this.#left.get(key);
    const gained = held === undefined ? this.#atOnce : ((now - held.at) / 1000) * this.#perSecond;
    const tokens = Math.min(this.#atOnce, (held?.tokens ?? 0) + Math.max(0, gained));
    const ok = tokens >= 1;
    this.#left.delete(key);
    this.#left.set(key, { tokens: ok ? tokens - 1 : tokens, at: now });
    // The longest unused bucket is probably full again.
    const [oldest] = this.#left.keys();
    if (this.#left.size > mostBuckets && oldest !== undefined) this.#left.delete(oldest);
    return ok ? { ok } : { ok, seconds: Math.ceil((1 - tokens) / this.#perSecond) };
  }
}
