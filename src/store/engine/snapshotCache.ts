import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { ResistCoat } from '../../studio/resist/resistCoat.ts';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import type { StudioNote } from '../../studio/handbook.ts';
import type { Studio } from '../../studio/settings/studio.ts';

/** The head of a stream: its last entry, and for a bucket the state that its entries fold to. */
export interface Head {
  readonly seq: Seq;
  readonly state?: BucketState;
}

/** What one studio's entries fold to. Immutable: a change replaces it. */
export interface Snapshot {
  readonly studio: Studio;
  readonly heads: ReadonlyMap<StreamNo, Head>;
  /** Resist coats that are on, once they were asked for. */
  readonly coats?: readonly ResistCoat[];
  /** The studio's own notes, once they were asked for. */
  readonly notes?: readonly StudioNote[];
}

export interface SnapshotCache {
  get(studio: StudioId): Snapshot | undefined;
  set(studio: StudioId, page: Snapshot): void;
}

/** Committed snapshots in memory, for the studios that were used last. */
export class MemorySnapshotCache implements SnapshotCache {
  readonly #pages = new Map<StudioId, Snapshot>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  get(studio: StudioId): Snapshot | undefined {
    return this.#pages.get(studio);
  }

  set(studio: StudioId, page: Snapshot): void {
    this.#pages.delete(studio);
    this.#pages.set(studio, page);
    const [oldest] = this.#pages.keys();
    if (this.#pages.size > this.#most && oldest !== undefined) this.#pages.delete(oldest);
  }

  clear(): void {
    this.#pages.clear();
  }
}

/** Snapshots of an open transaction: passed on when it commits, dropped when it rolls back. */
export class DraftPages implements SnapshotCache {
  readonly #below: SnapshotCache;
  readonly #changed = new Map<StudioId, Snapshot>();

  constructor(below: SnapshotCache) {
    this.#below = below;
  }

  get(studio: StudioId): Snapshot | undefined {
    return this.#changed.get(studio) ?? this.#below.get(studio);
  }

  set(studio: StudioId, page: Snapshot): void {
    this.#changed.set(studio, page);
  }

  keep(): void {
    for (const [studio, page] of this.#changed) this.#below.set(studio, page);
  }
}
