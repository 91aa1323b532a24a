import type { BucketEntry } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { applyToBucket, foldBucket } from '../../studio/bucket/fold/foldBucket.ts';
import type { Instant, StreamNo } from '../../studio/ids.ts';
import { writeEvent } from '../entries/eventRow.ts';
import { undoneIn } from '../../studio/entry.ts';

/** A bucket as it was at a moment that only moves on, while entries of that moment come in. */
export class BucketThen {
  readonly #no: StreamNo;
  readonly #later: BucketEntry[];
  /** What happened at a moment and has not been met again yet. */
  readonly #known = new Map<Instant, BucketEntry[]>();
  #state: BucketState;

  constructor(no: StreamNo, entries: readonly BucketEntry[]) {
    this.#no = no;
    const undone = undoneIn(entries);
    const valid = entries.filter(({ seq, event }) => event.kind !== 'undo' && !undone.has(seq));
    const setup = valid.find(({ event }) => event.kind === 'setup');
    const state = setup && foldBucket(no, [setup]);
    if (!setup || !state) throw new Error(`Bucket ${no} has no setup.`);
    this.#state = state;
    // The earliest last, to be taken off the end.
    this.#later = valid.filter((entry) => entry !== setup).sort((a, b) => b.at - a.at || b.seq - a.seq);
    for (const entry of this.#later) this.#known.set(entry.at, [entry, ...(this.#known.get(entry.at) ?? [])]);
  }

  get state(): BucketState {
    return this.#state;
  }

  moveTo(at: Instant): void {
    for (let next = this.#later.at(-1); next && next.at <= at; next = this.#later.at(-1)) {
      this.#state = applyToBucket(this.#state, next);
      this.#later.pop();
    }
  }

  apply(entry: BucketEntry): void {
    this.#state = applyToBucket(this.#state, entry);
  }

  /** An entry that says the same of the same moment; each is met once. */
  meet(event: BucketEntry['event'], at: Instant): BucketEntry | undefined {
    const then = this.#known.get(at) ?? [];
    const written = then.length === 0 ? '' : writeEvent(this.#no, event);
    const found = then.find((entry) => writeEvent(this.#no, entry.event) === written);
    if (found)
      this.#known.set(
        at,
        then.filter((entry) => entry !== found),
      );
    return found;
  }
}
