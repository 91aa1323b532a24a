import { setTimeout as pause } from 'node:timers/promises';
import { Lanes } from './lanes.ts';
import { isPassing } from './postgresProblem.ts';

/** No more turns at once than there are connections: waiting for one has a limit of its own. */
const mostAtOnce = 10;
/** A server is back within seconds after a restart; whoever waits longer is better told. */
export const patienceMs = 8_000;

/** Takes turns, each on a connection. */
export class Attempts {
  readonly #connections = new Lanes(mostAtOnce);

  once<T>(turn: () => Promise<T>): Promise<T> {
    return this.#connections.pass('', turn);
  }

  /** After a conflict, a deadlock or a lost connection nothing of the turn is there, and it is taken again. */
  async untilPassed<T>(turn: () => Promise<T>): Promise<T> {
    const giveUpAt = performance.now() + patienceMs;
    for (let tries = 0; ; tries += 1) {
      try {
        return await this.once(turn);
      } catch (error) {
        if (!isPassing(error) || performance.now() >= giveUpAt) throw error;
      }
      await pause(Math.min(500, 10 * 2 ** tries) * (0.5 + Math.random() / 2));
    }
  }

  /** All at once at first; when that fails, each alone, so that one that fails does so alone. */
  async together<J extends { fail(error: unknown): void }>(
    jobs: readonly J[],
    turn: (jobs: readonly J[]) => Promise<void>,
  ): Promise<void> {
    const giveUpAt = performance.now() + patienceMs;
    if (jobs.length > 1)
      try {
        return await this.once(() => turn(jobs));
      } catch (error) {
        if (performance.now() >= giveUpAt) return jobs.forEach((job) => job.fail(error));
      }
    for (const job of jobs)
      await this.untilPassed(() => turn([job])).catch((error: unknown) => job.fail(error));
  }
}
