import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { ResistCoat } from '../../studio/resist/resistCoat.ts';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import type { StudioNote } from '../../studio/handbook.ts';
import type { Studio } from '../../studio/settings/studio.ts';

/** Where a stream stands: its last entry, and for a bucket the state that its entries add up to. */
export interface Head {
  readonly seq: Seq;
  readonly state?: BucketState;
}

/** What one studio's entries add up to. Never changed, only replaced. */
export interface Snapshot {
  readonly studio: Studio;
  readonly heads: ReadonlyMap<StreamNo, Head>;
  /** Resist coats that are on, once somebody has asked for them. */
  readonly coats?: readonly ResistCoat[];
  /** The studio's own notes, likewise. */
  readonly notes?: readonly StudioNote[];
}

export interface SnapshotCache {
  get(studio: StudioId): Snapshot | undefined;
  set(studio: StudioId, page: Snapshot): void;
}

/** Committed pages in memory, those of the studios that were last asked for. */
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

/** Pages changed on the way to a commit: dropped with what is rolled back, handed down with what is kept. */
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
