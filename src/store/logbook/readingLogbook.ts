import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { foldCoats } from '../../studio/resist/foldResistCoats.ts';
import { foldFired } from '../../studio/firing/foldFired.ts';
import { foldPieces } from '../../studio/piece/foldPieces.ts';
import {
  readEntryId,
  studioStream,
  type EntryId,
  type Instant,
  type MemberId,
  type Seq,
  type StreamNo,
  type StudioId,
} from '../../studio/ids.ts';
import type { Logbook, Member } from '../../studio/logbook/ports.ts';
import { readLatest, type LoggedPlace } from '../entries/latestEntries.ts';
import { frozen } from '../engine/frozen.ts';
import { loadSnapshot } from '../states/loadSnapshot.ts';
import type { Snapshot } from '../engine/snapshotCache.ts';
import { readCoats, readEntries, readFired, readPieces } from '../entries/readEntries.ts';
import { readNotes } from './studioNotes.ts';
import { readOpenQuestions } from './openQuestions.ts';
import { reminderOf } from '../reminders/reminderRow.ts';
import { memberIdentified } from '../people/identities.ts';
import { standsFor } from '../people/standsFor.ts';
import type { Reading } from '../engine/turns.ts';

/** Enough, because pieces are fired within weeks. */
const pieceEntries = 1000;

/** Works with a logbook for as long as its turn lasts. */
export const during = async <Book extends { end(): void }, T>(
  book: Book,
  work: (book: Book) => Promise<T>,
): Promise<T> => {
  try {
    return await work(book);
  } finally {
    book.end();
  }
};

/** One studio's logbook during one turn. */
export class ReadingLogbook<Turn extends Reading = Reading> implements Logbook {
  protected readonly studioId: StudioId;
  readonly #turn: Turn;
  #over = false;

  constructor(turn: Turn, studioId: StudioId) {
    this.#turn = turn;
    this.studioId = studioId;
  }

  async studio() {
    return (await this.snapshot()).studio;
  }

  async buckets() {
    const { streams } = await this.snapshot();
    return [...streams.values()]
      .flatMap(({ state }): BucketState[] => (state ? [state] : []))
      .sort((a, b) => a.no - b.no);
  }

  async bucket(no: StreamNo) {
    return (await this.snapshot()).streams.get(no)?.state;
  }

  async coats() {
    return this.#remembered('coats', async () => foldCoats(await readCoats(this.turn.db, this.studioId)));
  }

  async pieces() {
    return foldPieces(await readPieces(this.turn.db, this.studioId, pieceEntries));
  }

  async fired() {
    return foldFired(await readFired(this.turn.db, this.studioId));
  }

  async entries(stream: StreamNo, range: { before?: Seq; most: number }) {
    return readEntries(this.turn.db, this.studioId, stream, { ...range, byMembers: true });
  }

  async latest(range: { from?: LoggedPlace; most: number }) {
    const buckets = (await this.streams()).filter((stream) => stream > studioStream);
    return readLatest(this.turn.db, this.studioId, buckets, range);
  }

  async entry(id: EntryId) {
    const named = readEntryId(id);
    if (!named) return undefined;
    const [entry] = await readEntries(this.turn.db, this.studioId, named.stream, { at: named.seq, most: 1 });
    return entry;
  }

  async streams() {
    return [...(await this.snapshot()).streams.keys()].sort((a, b) => a - b);
  }

  async history(stream: StreamNo, { after, most }: { after: Seq; most: number }) {
    return readEntries(this.turn.db, this.studioId, stream, { after, most });
  }

  async reminders(member: MemberId) {
    const rows = await this.turn.db
      .selectFrom('reminders')
      .where(({ and }) => and({ studio_id: this.studioId, member_id: member }))
      .selectAll()
      .orderBy('next_at')
      .execute();
    return rows.map(reminderOf);
  }

  async notes() {
    return this.#remembered('notes', () => readNotes(this.turn.db, this.studioId));
  }

  openQuestions(now: Instant) {
    return readOpenQuestions(this.turn.db, this.studioId, now);
  }

  async platformsOf(member: MemberId): Promise<string[]> {
    const rows = await this.turn.db
      .selectFrom('member_identities')
      .where(({ and }) => and({ studio_id: this.studioId, member_id: member }))
      .select('platform')
      .distinct()
      .execute();
    return rows.map(({ platform }) => platform);
  }

  async members(): Promise<Member[]> {
    return this.#people().orderBy('id').execute();
  }

  standsFor(member: MemberId): Promise<MemberId | undefined> {
    return standsFor(this.turn.db, this.studioId, member);
  }

  async member(id: MemberId): Promise<Member | undefined> {
    return this.#people().where('id', '=', id).executeTakeFirst();
  }

  async memberKnownAs(platform: string, external: string): Promise<Member | undefined> {
    const identity = { studio_id: this.studioId, platform, external_id: external };
    const id = await memberIdentified(this.turn.db, identity);
    return id && this.member(id);
  }

  async metAt(member: MemberId): Promise<Instant | undefined> {
    const row = await this.turn.db
      .selectFrom('members')
      .where(({ and }) => and({ studio_id: this.studioId, id: member }))
      .select('created_at')
      .executeTakeFirst();
    return row?.created_at;
  }

  /** Ends the turn: a logbook used afterwards would read or write in somebody else's turn. */
  end(): void {
    this.#over = true;
  }

  protected get turn(): Turn {
    if (this.#over) throw new Error('This logbook was used after its turn: something was not awaited.');
    return this.#turn;
  }

  protected async snapshot(): Promise<Snapshot> {
    const { db, snapshots } = this.turn;
    const known = snapshots.get(this.studioId);
    if (known) return known;
    const loaded = await loadSnapshot(db, this.studioId);
    snapshots.set(this.studioId, loaded);
    return loaded;
  }

  async #remembered<Name extends 'coats' | 'notes'>(
    name: Name,
    read: () => Promise<NonNullable<Snapshot[Name]>>,
  ): Promise<NonNullable<Snapshot[Name]>> {
    const known = (await this.snapshot())[name];
    if (known) return known;
    const found = frozen(await read());
    const { snapshots } = this.turn;
    const snapshot = snapshots.get(this.studioId);
    // If some were logged meanwhile, the snapshot's are newer.
    const newer = snapshot?.[name];
    if (newer) return newer;
    if (snapshot) snapshots.set(this.studioId, { ...snapshot, [name]: found });
    return found;
  }

  #people() {
    return this.turn.db.selectFrom('members').where('studio_id', '=', this.studioId).select(['id', 'name']);
  }
}
