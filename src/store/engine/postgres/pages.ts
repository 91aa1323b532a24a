import type { StudioId } from '../../../studio/ids.ts';
import type { Snapshot, SnapshotCache } from '../snapshotCache.ts';

/**
 * What studios' entries fold to, remembered with the version of the studio that it is true for. Another process that
 * writes to a studio raises its version, and so makes the page here stale.
 */
export class Pages {
  readonly #pages = new Map<StudioId, { version: number; snapshot: Snapshot }>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  /** What a turn knows of a studio at this version. Only the turn itself changes it. */
  at(studio: StudioId, version: number): SnapshotCache {
    const page = this.#pages.get(studio);
    let known = page?.version === version ? page.snapshot : undefined;
    return {
      get: (asked) => (asked === studio ? known : undefined),
      set: (changed, snapshot) => {
        if (changed !== studio) return;
        known = snapshot;
        if ((this.#pages.get(studio)?.version ?? version) <= version) this.#keep(studio, version, snapshot);
      },
    };
  }

  drop(studio: StudioId): void {
    this.#pages.delete(studio);
  }

  clear(): void {
    this.#pages.clear();
  }

  #keep(studio: StudioId, version: number, snapshot: Snapshot): void {
    this.#pages.delete(studio);
    this.#pages.set(studio, { version, snapshot });
    const [oldest] = this.#pages.keys();
    if (this.#pages.size > this.#most && oldest !== undefined) this.#pages.delete(oldest);
  }
}
