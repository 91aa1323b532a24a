/** So many a second over time, so many at once: a bucket of tokens for each key. */
export class TokenBucket {
  readonly #perSecond: number;
  readonly #atOnce: number;
  readonly #left = new Map<string, { tokens: number; at: number }>();

  constructor(perSecond: number, atOnce: number) {
    this.#perSecond = perSecond;
    this.#atOnce = atOnce;
  }

  /** Takes one for the key; otherwise answers the seconds until there is one. */
  take(key: string, now: number): { ok: true } | { ok: false; seconds: number } {
    const held = this.#left.get(key);
    const gained = held === undefined ? this.#atOnce : ((now - held.at) / 1000) * this.#perSecond;
    const tokens = Math.min(this.#atOnce, (held?.tokens ?? 0) + Math.max(0, gained));
    const ok = tokens >= 1;
    this.#left.delete(key);
    this.#left.set(key, { tokens: ok ? tokens - 1 : tokens, at: now });
    this.#forget();
    return ok ? { ok } : { ok, seconds: Math.ceil((1 - tokens) / this.#perSecond) };
  }

  /** The longest quiet go first: most of those are full again anyway. */
  #forget(): void {
    if (this.#left.size <= 20_000) return;
    const [oldest] = this.#left.keys();
    if (oldest !== undefined) this.#left.delete(oldest);
  }
}
