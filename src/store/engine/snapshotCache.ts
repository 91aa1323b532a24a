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

/** Holds what was used last, and lets go of what was not used for longest. */
export class LastUsed<Key, Value> extends Map<Key, Value> {
  readonly #most: number;

  constructor(most: number) {
    super();
    this.#most = most;
  }

  override get(key: Key): Value | undefined {
    const found = super.get(key);
    if (found !== undefined) this.set(key, found);
    return found;
  }

  override set(key: Key, value: Value): this {
    this.delete(key);
    super.set(key, value);
    if (this.size > this.#most) {
      const [oldest] = this.keys();
      if (oldest !== undefined) this.delete(oldest);
    }
    return this;
  }
}

/** Committed snapshots in memory, for the studios that were used last. */
export const memorySnapshots = (most: number) => new LastUsed<StudioId, Snapshot>(most);

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
