import { v7 as uuidv7 } from 'uuid';
import type { BucketEvent } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { undoneIn, type Entry } from '../../studio/entry.ts';
import {
  memberId,
  studioStream,
  type Instant,
  type MemberId,
  type Seq,
  type StreamNo,
} from '../../studio/ids.ts';
import type { Logged, LoggedEvent } from '../../studio/logbook/ports.ts';
import { nameKey } from '../../text/normalizedName.ts';
import type { StreamState } from '../engine/snapshotCache.ts';
import { withoutNul } from '../engine/withoutNul.ts';
import { readBucket } from '../entries/readEntries.ts';
import { WritingLogbook } from '../logbook/writingLogbook.ts';
import { addMember } from '../people/identities.ts';
import { refoldAndSave } from '../states/refoldAndSave.ts';
import { BucketThen } from './bucketThen.ts';

/** The entries that one import added to a stream. */
export interface Span {
  stream: StreamNo;
  from: Seq;
  to: Seq;
}

/**
 * A logbook that takes many old entries at once, in the order in which they happened. It shows a bucket as it was then, and
 * folds each bucket once, at the end. Nobody is reminded of what is long past.
 */
export class ImportingLogbook extends WritingLogbook {
  readonly #buckets = new Map<StreamNo, BucketThen>();
  readonly #spans = new Map<StreamNo, Span>();
  readonly #opened = new Set<StreamNo>();
  #known = 0;

  /** How many entries were in the logbook already, and are not logged again. */
  get known(): number {
    return this.#known;
  }

  /** What was added, and the buckets that were made for it. */
  get added(): { spans: Span[]; opened: StreamNo[] } {
    return { spans: [...this.#spans.values()], opened: [...this.#opened] };
  }

  async moveTo(bucket: StreamNo, at: Instant): Promise<void> {
    (await this.#bucketThen(bucket)).moveTo(at);
  }

  async memberNamed(typed: string, now: Instant): Promise<{ id: MemberId; isNew: boolean } | undefined> {
    const name = withoutNul(typed).replace(/\s+/g, ' ').trim();
    const called = await this.memberKnownAs('terminal', name);
    if (called) return { id: called.id, isNew: false };
    const known = (await this.members()).filter((member) => nameKey(member.name) === nameKey(name));
    const [one, ...others] = known;
    if (one) return others.length === 0 ? { id: one.id, isNew: false } : undefined;
    const id = memberId(uuidv7({ msecs: now }));
    const identity = { studio_id: this.studioId, platform: 'terminal', external_id: name };
    await addMember(this.turn.db, identity, { id, name, now });
    return { id, isNew: true };
  }

  override async buckets(): Promise<BucketState[]> {
    return (await super.buckets()).map((state) => this.#buckets.get(state.no)?.state ?? state);
  }

  override async bucket(no: StreamNo): Promise<BucketState | undefined> {
    return this.#buckets.get(no)?.state ?? super.bucket(no);
  }

  override log(...[bucket, event, logged]: Parameters<WritingLogbook['log']>) {
    return this.inOrder(async () => {
      const then = await this.#bucketThen(bucket);
      const known = then.meet(event, logged.at);
      if (known) {
        this.#known += 1;
        return { entry: known, state: then.state };
      }
      const entry = await this.append(bucket, event, logged);
      then.apply(entry);
      return { entry, state: then.state };
    });
  }

  override async open(...[settings, logged]: Parameters<WritingLogbook['open']>) {
    const opened = await super.open(settings, logged);
    this.#opened.add(opened.state.no);
    return opened;
  }

  /** Takes back what an import added, as far as it stands; a bucket that it made is retired, unless others have used it since. */
  async takeBack({ spans, opened }: { spans: readonly Span[]; opened: readonly StreamNo[] }, logged: Logged) {
    let count = 0;
    for (const { stream, from, to } of spans.filter((span) => span.stream > studioStream)) {
      const entries = await readBucket(this.turn.db, this.studioId, stream);
      const undone = undoneIn(entries);
      const standing = entries.filter(
        ({ seq, event: { kind } }) =>
          seq >= from && seq <= to && kind !== 'undo' && kind !== 'setup' && !undone.has(seq),
      );
      for (const { seq } of standing)
        await this.append<BucketEvent>(stream, { kind: 'undo', of: seq }, logged);
      count += standing.length;
      const isUnused = entries.every(({ seq, event: { kind } }) => seq <= to || kind === 'undo');
      if (opened.includes(stream) && isUnused)
        await this.append<BucketEvent>(stream, { kind: 'retire' }, logged);
    }
    return count;
  }

  override async save(): Promise<void> {
    await this.written();
    const snapshot = await this.snapshot();
    const streams = new Map<StreamNo, StreamState>(snapshot.streams);
    for (const { stream, to } of this.#spans.values())
      if (stream > studioStream)
        streams.set(stream, await refoldAndSave(this.turn.db, this.studioId, stream, to));
    this.turn.snapshots.set(this.studioId, { ...snapshot, streams });
  }

  protected override async append<E extends LoggedEvent>(
    stream: StreamNo,
    event: E,
    logged: Logged,
  ): Promise<Entry<E>> {
    const entry = await super.append(stream, event, logged);
    const from = this.#spans.get(stream)?.from ?? entry.seq;
    this.#spans.set(stream, { stream, from, to: entry.seq });
    return entry;
  }

  async #bucketThen(no: StreamNo): Promise<BucketThen> {
    const known = this.#buckets.get(no);
    if (known) return known;
    const then = new BucketThen(no, await readBucket(this.turn.db, this.studioId, no));
    this.#buckets.set(no, then);
    return then;
  }
}
