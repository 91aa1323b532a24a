/** Slow work, one piece at a time: it is meant to be slow, and the room has other things to do. */
export class Turns {
  readonly #first: (() => Promise<void>)[] = [];
  readonly #others: (() => Promise<void>)[] = [];
  #busy = false;

  /** What goes first waits for nothing but the piece under way. */
  run<T>(work: () => Promise<T>, first = false): Promise<T> {
    return new Promise((resolve, reject) => {
      (first ? this.#first : this.#others).push(() => work().then(resolve, reject));
      void this.#go();
    });
  }

  async #go(): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    let next: (() => Promise<void>) | undefined;
    while ((next = this.#first.shift() ?? this.#others.shift())) await next();
    this.#busy = false;
  }
}
