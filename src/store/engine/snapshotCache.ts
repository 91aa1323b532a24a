import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { ResistCoat } from '../../studio/resist/resistCoat.ts';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import type { StudioNote } from '../../studio/handbook.ts';
import type { Studio } from '../../studio/settings/studio.ts';

/** Where a stream stands: its last entry, and for a bucket the state that its entries fold to. */
export interface StreamState {
  readonly seq: Seq;
  readonly state?: BucketState;
  /** The entry as of which it was saved, with a state that can be used. */
  readonly stored?: Seq;
}

/** What one studio's entries fold to. Immutable: a change replaces it. */
export interface Snapshot {
  readonly studio: Studio;
  readonly streams: ReadonlyMap<StreamNo, StreamState>;
  /** Resist coats that are on, once they were asked for. */
  readonly coats?: readonly ResistCoat[];
  /** The studio's own notes, once they were asked for. */
  readonly notes?: readonly StudioNote[];
}

export interface SnapshotCache {
  get(studio: StudioId): Snapshot | undefined;
  set(studio: StudioId, snapshot: Snapshot): void;
}

/** Committed snapshots in memory, for the studios that were used last. */
export class MemorySnapshotCache implements SnapshotCache {
  readonly #snapshots = new Map<StudioId, Snapshot>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  get(studio: StudioId): Snapshot | undefined {
    const found = this.#snapshots.get(studio);
    if (found) this.#setLast(studio, found);
    return found;
  }

  /** The studio used last comes last: what is only read is kept as well. */
  #setLast(studio: StudioId, snapshot: Snapshot): void {
    this.#snapshots.delete(studio);
    this.#snapshots.set(studio, snapshot);
  }

  set(studio: StudioId, snapshot: Snapshot): void {
    this.#setLast(studio, snapshot);
    const [oldest] = this.#snapshots.keys();
    if (this.#snapshots.size > this.#most && oldest !== undefined) this.#snapshots.delete(oldest);
  }

  clear(): void {
    this.#snapshots.clear();
  }
}

/** Snapshots of an open transaction: passed on when it commits, dropped when it rolls back. */
export class DraftSnapshots implements SnapshotCache {
  readonly #below: SnapshotCache;
  readonly #changed = new Map<StudioId, Snapshot>();

  constructor(below: SnapshotCache) {
    this.#below = below;
  }

  get(studio: StudioId): Snapshot | undefined {
    return this.#changed.get(studio) ?? this.#below.get(studio);
  }

  set(studio: StudioId, snapshot: Snapshot): void {
    this.#changed.set(studio, snapshot);
  }

  keep(into = this.#below): void {
    for (const [studio, snapshot] of this.#changed) into.set(studio, snapshot);
  }
}
