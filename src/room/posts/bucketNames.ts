import type { BucketNames, RoomPorts } from '../ports.ts';

/** Lines after which a bucket may be new, or called something else. */
const renames = /^\/?\s*(?:bucket|undo|batch|redact)\b/i;

/** A cache of the buckets' names, so that showing a line costs no read. */
export class BucketNamesCache {
  readonly #read: RoomPorts['bucketNames'];
  #known: Promise<BucketNames> | undefined;

  constructor({ bucketNames }: Pick<RoomPorts, 'bucketNames'>) {
    this.#read = bucketNames;
  }

  all(): Promise<BucketNames> {
    if (this.#known) return this.#known;
    const fresh = this.#read();
    this.#known = fresh;
    fresh.catch(() => this.#known === fresh && this.forget());
    return fresh;
  }

  heard({ line }: { line: string }): void {
    if (renames.test(line)) this.forget();
  }

  forget(): void {
    this.#known = undefined;
  }
}
