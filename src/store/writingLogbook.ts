import type { BucketEvent, BucketSettings, Entry } from '../studio/bucketEvent.ts';
import type { BucketState } from '../studio/bucketState.ts';
import { applyToBucket, foldBucket } from '../studio/foldBucket.ts';
import { foldStudio } from '../studio/foldStudio.ts';
import {
  entryId,
  seq,
  streamNo,
  studioStream,
  type MemberId,
  type Seq,
  type StreamNo,
} from '../studio/ids.ts';
import type { Logged, LoggedEvent, WritableLogbook } from '../studio/ports.ts';
import type { Studio, StudioEvent } from '../studio/studio.ts';
import { millilitres } from '../glaze/units.ts';
import { writeEvent } from './eventRow.ts';
import type { Head } from './pages.ts';
import { readBucket, readStudio } from './readEntries.ts';
import { ReadingLogbook } from './readingLogbook.ts';
import { saveHead } from './saveHead.ts';
import type { Writing } from './turns.ts';
import { withoutNul, withoutNulWithin } from './withoutNul.ts';

export class WritingLogbook extends ReadingLogbook<Writing> implements WritableLogbook {
  readonly #moved = new Set<StreamNo>();

  async log(bucket: StreamNo, event: BucketEvent, logged: Logged) {
    const before = await this.bucket(bucket);
    if (!before) throw new Error(`There is no bucket ${bucket} to log in.`);
    const entry = await this.append(bucket, event, logged);
    const state = await this.#stateAfter(entry, before);
    if (!state) throw new Error(`Entry ${entry.id} would leave its bucket without a setup.`);
    await this.#moveHead(bucket, { seq: entry.seq, state });
    return { entry, state };
  }

  async open(settings: BucketSettings & { volume?: number }, logged: Logged) {
    const { heads } = await this.page();
    const bucket = streamNo(Math.max(0, ...heads.keys()) + 1);
    const { volume, ...rest } = settings;
    const setup: BucketEvent = {
      kind: 'setup',
      settings: rest,
      ...(volume !== undefined && { volume: millilitres(volume) }),
    };
    const entry = await this.append(bucket, setup, logged);
    const state = foldBucket(bucket, [entry]);
    if (!state) throw new Error(`Entry ${entry.id} did not open its bucket.`);
    await this.#moveHead(bucket, { seq: entry.seq, state });
    return { entry, state };
  }

  async logStudio(event: StudioEvent, logged: Logged): Promise<{ entry: Entry<StudioEvent>; state: Studio }> {
    const entry = await this.append(studioStream, event, logged);
    const { db, pages } = this.turn;
    const studio = foldStudio(await readStudio(db, this.studioId, studioStream));
    pages.set(this.studioId, { ...(await this.page()), studio });
    return { entry, state: studio };
  }

  async rename(member: MemberId, name: string): Promise<void> {
    await this.turn.db
      .updateTable('members')
      .set({ name: withoutNul(name) })
      .where('studio_id', '=', this.studioId)
      .where('id', '=', member)
      .execute();
  }

  /** Writes an entry at the end of a stream; the stream need not have been there before. */
  protected async append<E extends LoggedEvent>(
    stream: StreamNo,
    event: E,
    logged: Logged,
  ): Promise<Entry<E>> {
    const last = (await this.page()).heads.get(stream);
    const clean = withoutNulWithin(event);
    const entry: Entry<E> = {
      id: entryId(stream, seq((last?.seq ?? 0) + 1)),
      stream,
      seq: seq((last?.seq ?? 0) + 1),
      at: logged.at,
      loggedAt: logged.loggedAt,
      by: logged.by,
      event: clean,
    };
    if (!Number.isSafeInteger(entry.at) || !Number.isSafeInteger(entry.loggedAt)) {
      throw new Error(`Entry ${entry.id} is at no time that can be stored: ${entry.at}, ${entry.loggedAt}.`);
    }
    const { db } = this.turn;
    await db
      .insertInto('events')
      .values({
        studio_id: this.studioId,
        stream_no: stream,
        seq: entry.seq,
        at: entry.at,
        logged_at: entry.loggedAt,
        member_id: entry.by,
        event: writeEvent(stream, clean),
        undoes: clean.kind === 'undo' ? clean.of : null,
      })
      .execute();
    const note = logged.note === undefined ? '' : withoutNul(logged.note);
    if (note !== '') {
      await db
        .insertInto('notes')
        .values({ studio_id: this.studioId, stream_no: stream, seq: entry.seq, note })
        .execute();
    }
    await this.#moveHead(stream, { ...last, seq: entry.seq });
    return entry;
  }

  /** Stores where each stream that was written to stands now: once, however many entries there were. */
  async save(): Promise<void> {
    const { heads } = await this.page();
    for (const stream of this.#moved) {
      const head = heads.get(stream);
      if (head) await saveHead(this.turn.db, this.studioId, stream, head);
    }
  }

  async #stateAfter(entry: Entry, before: BucketState): Promise<BucketState | undefined> {
    const { kind } = entry.event;
    if (kind !== 'undo' && kind !== 'setup' && entry.at >= before.foldedTo)
      return applyToBucket(before, entry);
    return foldBucket(entry.stream, await readBucket(this.turn.db, this.studioId, entry.stream));
  }

  async #moveHead(stream: StreamNo, head: Head): Promise<void> {
    const page = await this.page();
    this.turn.pages.set(this.studioId, { ...page, heads: new Map(page.heads).set(stream, head) });
    this.#moved.add(stream);
  }
}
