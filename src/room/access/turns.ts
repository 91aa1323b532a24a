/** Runs slow work such as hashing one piece at a time, so that the room can answer others meanwhile. */
export class Turns {
  readonly #first: (() => Promise<void>)[] = [];
  readonly #others: (() => Promise<void>)[] = [];
  #busy = false;

  /** Work that goes `first` waits only for the piece under way. */
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
