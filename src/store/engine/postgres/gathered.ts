/** More would hold a studio's row for long, and what fails is done again with all that shared its turn. */
const mostAtOnce = 16;

/**
 * Gathers what waits for the same name while `run` is busy with it, so that it can be done together. One name does not hold up
 * another. `run` must not throw.
 */
export class Gathered<Name, Job> {
  readonly #waiting = new Map<Name, Job[]>();
  readonly #run: (name: Name, jobs: readonly Job[]) => Promise<void>;

  constructor(run: (name: Name, jobs: readonly Job[]) => Promise<void>) {
    this.#run = run;
  }

  add(name: Name, job: Job): void {
    const waiting = this.#waiting.get(name);
    if (waiting) waiting.push(job);
    else void this.#go(name, [job]);
  }

  async #go(name: Name, waiting: Job[]): Promise<void> {
    this.#waiting.set(name, waiting);
    while (waiting.length > 0) await this.#run(name, waiting.splice(0, mostAtOnce));
    this.#waiting.delete(name);
  }
}
