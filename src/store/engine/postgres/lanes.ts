/** Lets work pass in lanes: in each, so many at a time, first come first served. One lane does not hold up another. */
export class Lanes {
  readonly #wide: number;
  readonly #lanes = new Map<string, { going: number; waiting: (() => void)[] }>();

  constructor(wide: number) {
    this.#wide = wide;
  }

  async pass<T>(name: string, work: () => Promise<T>): Promise<T> {
    const lane = this.#lanes.get(name) ?? { going: 0, waiting: [] };
    this.#lanes.set(name, lane);
    if (lane.going >= this.#wide) await new Promise<void>((resolve) => lane.waiting.push(resolve));
    else lane.going += 1;
    try {
      return await work();
    } finally {
      // Whoever waits takes the place over.
      const next = lane.waiting.shift();
      if (next) next();
      else lane.going -= 1;
      if (lane.going === 0) this.#lanes.delete(name);
    }
  }
}
