import type { BucketEntry, BucketEvent } from '../bucket/bucketEvent.ts';
import type { Entry } from '../entry.ts';
import type { BucketSettings } from '../settings/bucketSettings.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import type { ResistCoat } from '../resist/resistCoat.ts';
import type { CoatEvent } from '../resist/coatEvent.ts';
import type { FiredEvent } from '../firing/firedEvent.ts';
import type { FiredState } from '../firing/foldFired.ts';
import type { Duration, EntryId, Instant, MemberId, Seq, StreamNo, StudioId } from '../ids.ts';
import type { StudioNote } from '../handbook.ts';
import type { OpenQuestion } from '../openQuestion.ts';
import type { PieceState } from '../piece/foldPieces.ts';
import type { PieceEvent } from '../piece/pieceEvent.ts';
import type { Reminder, ReminderAbout } from '../remind/reminder.ts';
import type { Studio, StudioEvent } from '../settings/studio.ts';

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json | undefined };

export interface Member {
  id: MemberId;
  name: string;
}

/** Everything that is logged, by the stream that it belongs to. */
export type LoggedEvent = BucketEvent | StudioEvent | CoatEvent | PieceEvent | FiredEvent;

export interface Logged {
  at: Instant;
  loggedAt: Instant;
  by: MemberId;
  note?: string;
}

/** One studio's logbook at one moment. */
export interface Logbook {
  studio(): Promise<Studio>;
  /** Every bucket, retired ones included, ordered by number. */
  buckets(): Promise<BucketState[]>;
  bucket(no: StreamNo): Promise<BucketState | undefined>;
  /** Every resist coat that is still on, of all members. */
  coats(): Promise<readonly ResistCoat[]>;
  /** Pieces on their way to the kiln, oldest first; very old ones are left out. */
  pieces(): Promise<PieceState[]>;
  /** Fired results, oldest first. */
  fired(): Promise<FiredState[]>;
  /** Entries of a stream that somebody logged, the last first, undone ones included. */
  entries(stream: StreamNo, range: { before?: Seq; most: number }): Promise<(Entry<LoggedEvent> & Notes)[]>;
  /** The last entries of all buckets that somebody logged, from one of them on, undone ones included. */
  latest(range: {
    from?: Pick<Entry<LoggedEvent>, 'stream' | 'seq' | 'loggedAt'>;
    most: number;
  }): Promise<(Entry<LoggedEvent> & Notes)[]>;
  entry(id: EntryId): Promise<(Entry<LoggedEvent> & Notes) | undefined>;
  /** Every stream that has entries. */
  streams(): Promise<StreamNo[]>;
  /** Entries of a stream after a given seq, in the order in which they were logged, undone ones included. */
  history(stream: StreamNo, range: { after: Seq; most: number }): Promise<(Entry<LoggedEvent> & Notes)[]>;
  /** A member's pending and recent reminders, the next first. */
  reminders(member: MemberId): Promise<Reminder[]>;
  /** The studio's own notes, by number. The same array is returned until a note changes. */
  notes(): Promise<readonly StudioNote[]>;
  /** Questions that /ask could not answer, the last asked first; none that is too old. */
  openQuestions(now: Instant): Promise<OpenQuestion[]>;
  members(): Promise<Member[]>;
  /** The current id of a member: a different one after a link, undefined once they are forgotten. */
  standsFor(member: MemberId): Promise<MemberId | undefined>;
  member(id: MemberId): Promise<Member | undefined>;
  /** The member with this id on a platform. */
  memberKnownAs(platform: string, external: string): Promise<Member | undefined>;
  /** The platforms on which a member is known. */
  platformsOf(member: MemberId): Promise<string[]>;
  /** When the bot first met a member. */
  metAt(member: MemberId): Promise<Instant | undefined>;
}

export interface Notes {
  note?: string;
  /** It had a note, and a keeper removed it. */
  noteRemoved?: true;
  /** The entry that undid this one. */
  undoneBy?: Seq;
}

/** The same logbook within a transaction that may write. */
export interface WritableLogbook extends Logbook {
  /** Appends to a bucket's stream and returns the entry and the new state. */
  log(
    bucket: StreamNo,
    event: BucketEvent,
    logged: Logged,
  ): Promise<{ entry: BucketEntry; state: BucketState }>;
  /** Sets up a new bucket under the next number. */
  open(
    settings: BucketSettings & { volume?: number },
    logged: Logged,
  ): Promise<{ entry: BucketEntry; state: BucketState }>;
  logStudio(event: StudioEvent, logged: Logged): Promise<{ entry: Entry<StudioEvent>; state: Studio }>;
  /** Appends to the coats' stream and returns the entry and all coats that are then on. */
  logCoat(
    event: CoatEvent,
    logged: Logged,
  ): Promise<{ entry: Entry<CoatEvent>; coats: readonly ResistCoat[] }>;
  logPiece(event: PieceEvent, logged: Logged): Promise<{ entry: Entry<PieceEvent> }>;
  logFired(event: FiredEvent, logged: Logged): Promise<{ entry: Entry<FiredEvent> }>;
  /** Reminds a member of a bucket at a time that they asked for; asked again, at the new one. Returns its key. */
  remindAt(member: MemberId, bucket: StreamNo, at: Instant, now: Instant): Promise<string>;
  /** Postpones a member's reminder, delivered already or not; false when there is none with that key. */
  putOff(member: MemberId, key: string, to: Instant): Promise<boolean>;
  /** Removes a member's reminder for good. */
  finish(member: MemberId, key: string): Promise<boolean>;
  /** Saves a studio note: under its number when it has one, else under the next. */
  keepNote(note: Omit<StudioNote, 'no'> & { no?: number }): Promise<StudioNote>;
  /** Removes a note's words; false when there is no note with that number. */
  dropNote(no: number): Promise<boolean>;
  /** Counts one more entry of a member on this day (of UTC); returns how many there are then. */
  countToday(member: MemberId, now: Instant): Promise<number>;
  /** Keeps a question that /ask could not answer; asked again, it is counted. Only `by` says who asked. */
  keepQuestion(question: Omit<OpenQuestion, 'no' | 'times'>): Promise<void>;
  /** Forgets an open question; false when there is none with that number. */
  dropQuestion(no: number): Promise<boolean>;
  rename(member: MemberId, name: string): Promise<void>;
  /** Removes an entry's note for good; false when it has none. */
  redact(entry: EntryId, by: MemberId): Promise<boolean>;
  /** Takes a person's name out of the names of buckets, cups, sessions and recipes. Old entries follow soon after. */
  redactName(name: string): Promise<void>;
  /** A new code by which a member who is known elsewhere under another name can be linked to this one. */
  offerLink(member: MemberId, now: Instant): Promise<{ code: string; until: Instant }>;
  /** The member whose valid code this is. */
  offeredBy(typed: string, now: Instant): Promise<MemberId | undefined>;
  /** Links whoever typed the code with the member it was given to; the latter's name stays. */
  link(
    member: MemberId,
    typed: string,
    now: Instant,
  ): Promise<{ ok: true; into: MemberId } | { ok: false; why: 'no-such-code' | 'own-code' | 'too-many' }>;
  /** Removes a member's name, logins and reminders at once; their words are removed everywhere soon after. */
  forget(member: MemberId): Promise<void>;
}

/** The result of some work: whether to commit it, and what a repeat gets if that differs. */
export interface WriteResult<T> {
  keep: boolean;
  value: T;
  repeated?: T;
}

/** The store as the desk sees it. */
export interface LogbookStore {
  /** A studio's settings as they stand now: every interaction asks, so it waits for no turn where none is needed. */
  studio(studio: StudioId): Promise<Studio>;
  read<T>(studio: StudioId, work: (book: Logbook) => Promise<T>): Promise<T>;
  /** The same for long reads, which must not hold up anybody else. */
  readSnapshot<T>(studio: StudioId, work: (book: Logbook) => Promise<T>): Promise<T>;
  /** Idempotent: runs once for each key; a repeat gets the stored value. Nothing is written unless the work says so. */
  writeOnce<T>(
    studio: StudioId,
    key: string,
    work: (book: WritableLogbook) => Promise<WriteResult<T>>,
  ): Promise<T>;
}

/** The members and studios behind the ids of a platform. */
export interface People {
  /** The studio of a Discord server, a terminal or a room; created when it is new. */
  studioOf(platform: string, external: string, name: string): Promise<StudioId>;
  /** The same, without creating one. */
  studioKnownAs(platform: string, external: string): Promise<StudioId | undefined>;
  /** A studio's id on a platform, when it has one. */
  externalOfStudio(studio: StudioId, platform: string): Promise<string | undefined>;
  memberOf(studio: StudioId, platform: string, external: string, name: string): Promise<MemberId>;
  /** A member's id on a platform, when they have one. */
  externalOf(studio: StudioId, member: MemberId, platform: string): Promise<string | undefined>;
  /** Every studio in the file, oldest first. */
  studios(): Promise<{ id: StudioId; name: string }[]>;
  /** Those whose room somebody has come into. */
  studiosWithRoom(): Promise<StudioId[]>;
}

/** What happened to people: two were linked into one, or words of somebody are being erased. */
export type PeopleChange =
  | { kind: 'joined'; studio: StudioId; from: MemberId; into: MemberId }
  | {
      kind: 'erased';
      studio: StudioId;
      /** The forgotten members; empty when only a note is removed. */
      members: readonly MemberId[];
      /** Takes the words out of a remembered answer. */
      clean<T>(kept: T): T;
    };

/** Command lines too long for a button's id, kept until they expire. */
export interface HeldLines {
  /** Returns its id at once; it is written within moments. */
  hold(studio: StudioId, line: string, until: Instant): string;
  held(id: string, now: Instant): Promise<{ studio: StudioId; line: string } | undefined>;
}

/** A reminder that a platform has claimed, to deliver it. */
export interface ClaimedReminder {
  studio: StudioId;
  member: MemberId;
  key: string;
  about: ReminderAbout;
  dueAt: Instant;
  goodUntil: Instant;
  /** A platform drops a second message with the same nonce, for some minutes. */
  nonce: string;
  /** How often it has been claimed, this time included. */
  tries: number;
  /** When a try began that may have been delivered, and nobody knows. */
  unsureSince?: Instant;
}

/** How a try ended: delivered; to be retried, with `unsure` when it may have been delivered; or no longer of use. */
export type ReminderOutcome = { told: true } | { again: Instant; unsure: boolean } | { dropped: true };

/** The stored queue of reminders: none is lost, and none is delivered twice. */
export interface ReminderQueue {
  /** Plans the reminders that recur: of every studio's sessions now and soon, whatever happened to earlier ones. */
  plan(now: Instant): Promise<void>;
  /** Makes reminders that are due available again at once: their claimant died, or had no working channel. */
  reclaim(now: Instant): Promise<void>;
  /** Claims what is due; nobody else can claim it before the lease ends. */
  claim(now: Instant, leaseEnds: Instant, most: number): Promise<ClaimedReminder[]>;
  /** Lengthens the lease of what is still being sent. */
  hold(reminders: readonly ClaimedReminder[], lease: Duration): Promise<void>;
  /** Whether a reminder is still this claim's: a process that stood still may have lost it to another. */
  isHeld(reminder: ClaimedReminder): Promise<boolean>;
  settle(reminder: ClaimedReminder, outcome: ReminderOutcome): Promise<void>;
  /** Tells the keepers, at most once a week, that somebody cannot be reached. */
  unreachable(studio: StudioId, why: 'closed' | 'gone', now: Instant): Promise<void>;
}
