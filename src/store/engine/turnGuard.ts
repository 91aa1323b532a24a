import { AsyncLocalStorage } from 'node:async_hooks';
import { StoreProblem } from './storeProblem.ts';
import type { TransactionOutcome, Writing } from './turns.ts';

/** In the bundled program this is false: to follow every promise takes a tenth of the time of a command. */
const isFollowed = process.env['NODE_ENV'] !== 'production';
/** More turns than this would wait so long that nobody needs the answer any more. */
const mostWaiting = 4_000;

export interface Job {
  /** Cannot throw: it settles the promise that somebody waits for. */
  fail(error: unknown): void;
}

export interface WriteJob extends Job {
  run(writing: Writing): Promise<Omit<TransactionOutcome<unknown>, 'value'> & { acknowledge(): void }>;
}

/** Refuses whoever asks for a turn that would never come. */
export class TurnGuard {
  readonly #name: string;
  readonly #within = isFollowed ? new AsyncLocalStorage<true>() : undefined;
  #closed = false;

  constructor(name: string) {
    this.#name = name;
  }

  /** Throws when the store is closed, when too many wait, and (unless bundled) within the work of another turn. */
  refuse(waiting: number): void {
    if (this.#within?.getStore() === true)
      throw new Error('A turn was asked for within a turn: it would wait for itself.');
    if (this.#closed) throw new StoreProblem('closed', this.#name, 'the store is closed');
    if (waiting >= mostWaiting)
      throw new StoreProblem('crowded', this.#name, `${mostWaiting} wait for their turn`);
  }

  close(): void {
    this.#closed = true;
  }

  run<T>(work: () => Promise<T>): Promise<T> {
    return this.#within ? this.#within.run(true, work) : work();
  }

  /** The work as a job, and the promise of what it comes to. */
  writeJob<T>(work: (writing: Writing) => Promise<TransactionOutcome<T>>): {
    job: WriteJob;
    done: Promise<T>;
  } {
    const { promise: done, resolve, reject: fail } = Promise.withResolvers<T>();
    const run: WriteJob['run'] = async (writing) => {
      const { value, ...outcome } = await this.run(() => work(writing));
      return { ...outcome, acknowledge: () => resolve(value) };
    };
    return { job: { run, fail }, done };
  }
}
