import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { CoatState } from '../../studio/resist/coat.ts';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import type { StudioNote } from '../../studio/handbook.ts';
import type { Studio } from '../../studio/settings/studio.ts';

/** Where a stream stands: its last entry, and for a bucket the state that its entries add up to. */
export interface Head {
  readonly seq: Seq;
  readonly state?: BucketState;
}

/** What one studio's entries add up to. Never changed, only replaced. */
export interface Page {
  readonly studio: Studio;
  readonly heads: ReadonlyMap<StreamNo, Head>;
  /** Resist coats that are on, once somebody has asked for them. */
  readonly coats?: readonly CoatState[];
  /** The studio's own notes, likewise. */
  readonly notes?: readonly StudioNote[];
}

export interface Pages {
  get(studio: StudioId): Page | undefined;
  set(studio: StudioId, page: Page): void;
}

/** Committed pages in memory, those of the studios that were last asked for. */
export class RememberedPages implements Pages {
  readonly #pages = new Map<StudioId, Page>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  get(studio: StudioId): Page | undefined {
    return this.#pages.get(studio);
  }

  set(studio: StudioId, page: Page): void {
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
export class DraftPages implements Pages {
  readonly #below: Pages;
  readonly #changed = new Map<StudioId, Page>();

  constructor(below: Pages) {
    this.#below = below;
  }

  get(studio: StudioId): Page | undefined {
    return this.#changed.get(studio) ?? this.#below.get(studio);
  }

  set(studio: StudioId, page: Page): void {
    this.#changed.set(studio, page);
  }

  keep(): void {
    for (const [studio, page] of this.#changed) this.#below.set(studio, page);
  }
}
