const first = 1_000;
const longest = 60_000;

/** How long to wait before the next try: longer with each that failed, and not the same on every phone. */
export class GrowingPause {
  #next = first;

  next(): number {
    const pause = this.#next * (0.75 + Math.random() / 2);
    this.#next = Math.min(this.#next * 2, longest);
    return pause;
  }

  /** Call it when a try succeeded. */
  over(): void {
    this.#next = first;
  }
}
