import type { BucketEntry, BucketEvent } from '../../studio/bucket/bucketEvent.ts';
import { millilitres } from '../../glaze/units.ts';
import type { Entry } from '../../studio/entry.ts';
import type { BucketSettings } from '../../studio/settings/bucketSettings.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { applyToBucket, foldBucket } from '../../studio/bucket/fold/foldBucket.ts';
import type { CoatEvent } from '../../studio/resist/coatEvent.ts';
import { applyToCoats, foldCoats } from '../../studio/resist/foldResistCoats.ts';
import type { FiredEvent } from '../../studio/firing/firedEvent.ts';
import {
  coatStream,
  entryId,
  firedStream,
  pieceStream,
  seq,
  streamNo,
  studioStream,
  type Instant,
  type MemberId,
  type StreamNo,
} from '../../studio/ids.ts';
import type { StudioNote } from '../../studio/handbook.ts';
import { noteTexts } from '../../studio/people/noteTexts.ts';
import type { PieceEvent } from '../../studio/piece/pieceEvent.ts';
import type { Logged, LoggedEvent, WritableLogbook } from '../../studio/logbook/ports.ts';
import type { Studio, StudioEvent } from '../../studio/settings/studio.ts';
import { frozen } from '../engine/frozen.ts';
import { insertEntry } from '../entries/insertEntry.ts';
import type { StreamState, Snapshot } from '../engine/snapshotCache.ts';
import type { OpenQuestion } from '../../studio/openQuestion.ts';
import { countToday } from './countToday.ts';
import { dropOpenQuestion, saveOpenQuestion } from './openQuestions.ts';
import { RemindersLogbook } from './remindersLogbook.ts';
import { readCoats } from '../entries/readEntries.ts';
import {
  movesReminders,
  reachAnew,
  replanCoats,
  replanMornings,
  replanSessions,
} from '../reminders/replanStudio.ts';
import { forgetNote, readNotes, saveNote } from './studioNotes.ts';
import { replanUnlogged } from '../reminders/replanUnlogged.ts';
import { addsOn } from '../states/caughtUp.ts';
import { bucketAnew, studioAnew } from '../states/foldedAnew.ts';
import { saveStreamState } from '../states/saveStreamState.ts';
import { withoutNulWithin } from '../engine/withoutNul.ts';

/** One studio's logbook in a transaction. Its writes run one after another, in the order of the calls. */
export class WritingLogbook extends RemindersLogbook implements WritableLogbook {
  readonly #moved = new Set<StreamNo>();

  log(
    bucket: StreamNo,
    event: BucketEvent,
    logged: Logged,
  ): Promise<{ entry: BucketEntry; state: BucketState }> {
    return this.inOrder(async () => {
      const before = await this.bucket(bucket);
      if (!before) throw new Error(`There is no bucket ${bucket} to log in.`);
      const entry = await this.append(bucket, event, logged);
      const after = addsOn(entry, before)
        ? applyToBucket(before, entry)
        : await bucketAnew(this.turn.db, this.studioId, bucket);
      const state = this.#setState(entry, after);
      // Few entries change the unlogged changes, so few pay for planning reminders.
      if (state.unlogged !== before.unlogged)
        await replanUnlogged(this.#planning(await this.studio(), logged.loggedAt), before, state);
      return { entry, state };
    });
  }

  open(
    settings: BucketSettings & { volume?: number },
    logged: Logged,
  ): Promise<{ entry: BucketEntry; state: BucketState }> {
    return this.inOrder(async () => {
      const { streams } = await this.snapshot();
      const bucket = streamNo(Math.max(0, ...streams.keys()) + 1);
      const { volume, ...rest } = settings;
      const known = volume !== undefined && { volume: millilitres(volume) };
      const setup: BucketEvent = { kind: 'setup', settings: rest, ...known };
      const entry = await this.append(bucket, setup, logged);
      return { entry, state: this.#setState(entry, foldBucket(bucket, [entry])) };
    });
  }

  logStudio(event: StudioEvent, logged: Logged): Promise<{ entry: Entry<StudioEvent>; state: Studio }> {
    return this.inOrder(async () => {
      const entry = await this.append(studioStream, event, logged);
      const state = await studioAnew(this.turn.db, this.studioId);
      this.#change((snapshot) => ({ ...snapshot, studio: state }));
      if (movesReminders(event)) await this.#replanAll(state, logged.loggedAt);
      if (event.kind === 'channel') await reachAnew(this.#planning(state, logged.loggedAt));
      return { entry, state };
    });
  }

  logCoat(event: CoatEvent, logged: Logged) {
    return this.inOrder(async () => {
      const before = await this.coats();
      const entry = await this.append(coatStream, event, logged);
      const coats = frozen(
        entry.event.kind === 'undo'
          ? foldCoats(await readCoats(this.turn.db, this.studioId))
          : applyToCoats(before, entry),
      );
      this.#change((snapshot) => ({ ...snapshot, coats }));
      await replanCoats(this.#planning(await this.studio(), logged.loggedAt), before, coats);
      return { entry, coats };
    });
  }

  logPiece(event: PieceEvent, logged: Logged): Promise<{ entry: Entry<PieceEvent> }> {
    return this.inOrder(async () => ({ entry: await this.append(pieceStream, event, logged) }));
  }

  logFired(event: FiredEvent, logged: Logged): Promise<{ entry: Entry<FiredEvent> }> {
    return this.inOrder(async () => ({ entry: await this.append(firedStream, event, logged) }));
  }

  keepNote(note: Omit<StudioNote, 'no'> & { no?: number }): Promise<StudioNote> {
    return this.inOrder(async () => {
      const before = (await this.notes()).find(({ no }) => no === note.no);
      const kept = await saveNote(this.turn.db, this.studioId, withoutNulWithin(note));
      const still = new Set(noteTexts(kept));
      await this.forgetTexts(before ? noteTexts(before).filter((text) => !still.has(text)) : []);
      await this.#notesAnew();
      return kept;
    });
  }

  dropNote(no: number): Promise<boolean> {
    return this.inOrder(async () => {
      const before = (await this.notes()).find((note) => note.no === no);
      const dropped = await forgetNote(this.turn.db, this.studioId, no);
      await this.forgetTexts(before ? noteTexts(before) : []);
      await this.#notesAnew();
      return dropped;
    });
  }

  countToday(member: MemberId, now: Instant): Promise<number> {
    return this.inOrder(() => countToday(this.turn.db, this.studioId, member, now));
  }

  keepQuestion(question: Omit<OpenQuestion, 'no' | 'times'>): Promise<void> {
    return this.inOrder(() => saveOpenQuestion(this.turn.db, this.studioId, withoutNulWithin(question)));
  }

  dropQuestion(no: number): Promise<boolean> {
    return this.inOrder(() => dropOpenQuestion(this.turn.db, this.studioId, no));
  }

  /** Saves where changed streams stand: a new one, and a bucket that got so many entries since it was last saved. */
  async save({ every }: { every: number }): Promise<void> {
    await this.written();
    const { streams } = await this.snapshot();
    for (const stream of this.#moved) {
      const stood = streams.get(stream);
      if (!stood) continue;
      const { seq, state, stored } = stood;
      if (stored !== undefined && (!state || seq - stored < every)) continue;
      await saveStreamState(this.turn.db, this.studioId, stream, stood);
      this.#setStream(stream, { ...stood, stored: seq });
    }
  }

  /** Appends an entry to a stream, which may be new. */
  protected async append<E extends LoggedEvent>(
    stream: StreamNo,
    event: E,
    logged: Logged,
  ): Promise<Entry<E>> {
    const last = (await this.snapshot()).streams.get(stream);
    const next = seq((last?.seq ?? 0) + 1);
    const entry: Entry<E> = {
      id: entryId(stream, next),
      stream,
      seq: next,
      at: logged.at,
      loggedAt: logged.loggedAt,
      by: logged.by,
      event: withoutNulWithin(event),
    };
    await insertEntry(this.turn.db, this.studioId, entry, logged.note);
    this.#setStream(stream, { ...last, seq: next });
    return entry;
  }

  #setState(entry: BucketEntry, state: BucketState | undefined): BucketState {
    if (!state) throw new Error(`Entry ${entry.id} would leave its bucket without a setup.`);
    const stored = this.turn.snapshots.get(this.studioId)?.streams.get(entry.stream)?.stored;
    this.#setStream(entry.stream, {
      seq: entry.seq,
      state: frozen(state),
      ...(stored !== undefined && { stored }),
    });
    return state;
  }

  #planning(studio: Studio, now: Instant) {
    return { db: this.turn.db, id: this.studioId, studio, now };
  }

  async #replanAll(studio: Studio, now: Instant): Promise<void> {
    const planning = this.#planning(studio, now);
    await replanCoats(planning, [], await this.coats());
    await replanSessions(planning);
    await replanMornings(planning);
  }

  async #notesAnew(): Promise<void> {
    await this.snapshot();
    const notes = frozen(await readNotes(this.turn.db, this.studioId));
    this.#change((snapshot) => ({ ...snapshot, notes }));
  }

  #setStream(stream: StreamNo, state: StreamState): void {
    this.#change((snapshot) => ({ ...snapshot, streams: new Map(snapshot.streams).set(stream, state) }));
    this.#moved.add(stream);
  }

  /** Reads and replaces the snapshot in one step, so that changes by other work of this turn are not lost. */
  #change(changed: (snapshot: Snapshot) => Snapshot): void {
    const { snapshots } = this.turn;
    const snapshot = snapshots.get(this.studioId);
    if (!snapshot) throw new Error('A snapshot was changed before it was loaded.');
    snapshots.set(this.studioId, changed(snapshot));
  }
}
