import { AsyncLocalStorage } from 'node:async_hooks';

/** In the bundled program this is false: to follow every promise takes a tenth of the time of a command. */
const isFollowed = process.env['NODE_ENV'] !== 'production';

/** Tells whether something was asked for within the work of a turn, wherever that is checked: in tests, above all. */
export class TurnGuard {
  readonly #within = isFollowed ? new AsyncLocalStorage<true>() : undefined;

  get isWithin(): boolean {
    return this.#within?.getStore() === true;
  }

  run<T>(work: () => Promise<T>): Promise<T> {
    return this.#within ? this.#within.run(true, work) : work();
  }
}
