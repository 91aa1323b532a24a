import type { BucketEntry, BucketEvent } from '../bucket/bucketEvent.ts';
import type { Entry } from '../entry.ts';
import type { BucketSettings } from '../settings/bucketSettings.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import type { ResistCoat } from '../resist/resistCoat.ts';
import type { CoatEvent } from '../resist/coatEvent.ts';
import type { FiredEvent } from '../firing/firedEvent.ts';
import type { FiredState } from '../firing/foldFired.ts';
import type { EntryId, Instant, MemberId, Seq, StreamNo, StudioId } from '../ids.ts';
import type { StudioNote } from '../handbook.ts';
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

/** One studio's logbook as it stands at one moment. */
export interface Logbook {
  studio(): Promise<Studio>;
  /** Every bucket, retired ones too, in the order of their numbers. */
  buckets(): Promise<BucketState[]>;
  bucket(no: StreamNo): Promise<BucketState | undefined>;
  /** Every resist coat that is on still, whoever's. */
  coats(): Promise<readonly ResistCoat[]>;
  /** Pieces on their way to the kiln, oldest first; those of long ago left out. */
  pieces(): Promise<PieceState[]>;
  /** What came out of the kiln, oldest first. */
  fired(): Promise<FiredState[]>;
  /** Entries of a stream, newest logged first; undone ones too. */
  entries(stream: StreamNo, range: { before?: Seq; most: number }): Promise<(Entry<LoggedEvent> & Notes)[]>;
  entry(id: EntryId): Promise<(Entry<LoggedEvent> & Notes) | undefined>;
  /** Every stream that something was ever logged in. */
  streams(): Promise<StreamNo[]>;
  /** Entries of a stream after a place, in the order in which they were logged; undone ones too. */
  history(stream: StreamNo, range: { after: Seq; most: number }): Promise<(Entry<LoggedEvent> & Notes)[]>;
  /** A member's reminders that are still to come or lately came, the next first. */
  reminders(member: MemberId): Promise<Reminder[]>;
  /** The studio's own notes, by number. The same list until one is changed. */
  notes(): Promise<readonly StudioNote[]>;
  members(): Promise<Member[]>;
  /** Who somebody is by now: another once two are linked, nobody once they are forgotten. */
  standsFor(member: MemberId): Promise<MemberId | undefined>;
  member(id: MemberId): Promise<Member | undefined>;
}

export interface Notes {
  note?: string;
  /** There was a note, and a keeper has taken it out. */
  noteRemoved?: true;
  /** The entry that took this one back. */
  undoneBy?: Seq;
}

/** The same logbook inside the one transaction that may write to it. */
export interface WritableLogbook extends Logbook {
  /** Appends to a bucket's stream and answers the entry and the state that follows from it. */
  log(
    bucket: StreamNo,
    event: BucketEvent,
    logged: Logged,
  ): Promise<{ entry: BucketEntry; state: BucketState }>;
  /** Opens the next bucket number with a setup entry. */
  open(
    settings: BucketSettings & { volume?: number },
    logged: Logged,
  ): Promise<{ entry: BucketEntry; state: BucketState }>;
  logStudio(event: StudioEvent, logged: Logged): Promise<{ entry: Entry<StudioEvent>; state: Studio }>;
  /** Appends to the coats' stream and answers the entry and all coats that are on then. */
  logCoat(
    event: CoatEvent,
    logged: Logged,
  ): Promise<{ entry: Entry<CoatEvent>; coats: readonly ResistCoat[] }>;
  logPiece(event: PieceEvent, logged: Logged): Promise<{ entry: Entry<PieceEvent> }>;
  logFired(event: FiredEvent, logged: Logged): Promise<{ entry: Entry<FiredEvent> }>;
  /** Puts a member's reminder off, said already or not; false when there is none of that name. */
  putOff(member: MemberId, key: string, to: Instant): Promise<boolean>;
  /** Takes a member's reminder out of the queue for good. */
  finish(member: MemberId, key: string): Promise<boolean>;
  /** Keeps a note of the studio's own: under its number when it has one, else under the next. */
  keepNote(note: Omit<StudioNote, 'no'> & { no?: number }): Promise<StudioNote>;
  /** Forgets what a note said; false when there is none of that number. */
  dropNote(no: number): Promise<boolean>;
  rename(member: MemberId, name: string): Promise<void>;
  /** Takes an entry's note out for good; false when it has none. */
  redact(entry: EntryId, by: MemberId): Promise<boolean>;
  /** A fresh code by which the member, known elsewhere under another name, can be made one with this one. */
  offerLink(member: MemberId, now: Instant): Promise<{ code: string; until: Instant }>;
  /** Whose code it is, while it holds good. */
  offeredBy(typed: string, now: Instant): Promise<MemberId | undefined>;
  /** Makes whoever typed the code one with whom it was given to, under the latter's name. */
  link(
    member: MemberId,
    typed: string,
    now: Instant,
  ): Promise<{ ok: true; into: MemberId } | { ok: false; why: 'no-such-code' | 'own-code' | 'too-many' }>;
  /** Takes a member's name, ways in and reminders out at once, and their words wherever they are soon after. */
  forget(member: MemberId): Promise<void>;
}

/** What came of some work: whether it stays, and what a repeat gets when that is not the same. */
export interface WriteResult<T> {
  keep: boolean;
  value: T;
  repeated?: T;
}

/** The store as the desk sees it. */
export interface LogbookStore {
  read<T>(studio: StudioId, work: (book: Logbook) => Promise<T>): Promise<T>;
  /** The same for work that reads so much that nobody should have to wait for its end. */
  readSnapshot<T>(studio: StudioId, work: (book: Logbook) => Promise<T>): Promise<T>;
  /** Runs once a key: a repeat gets the stored value; nothing is kept unless the work says so. */
  writeOnce<T>(
    studio: StudioId,
    key: string,
    work: (book: WritableLogbook) => Promise<WriteResult<T>>,
  ): Promise<T>;
}

/** Who somebody on a platform is in a studio. */
export interface People {
  /** The studio of a Discord server, the terminal, or a room; made when it is new. */
  studioOf(platform: string, external: string, name: string): Promise<StudioId>;
  memberOf(studio: StudioId, platform: string, external: string, name: string): Promise<MemberId>;
  /** A member's own name on a platform, when they have one there. */
  externalOf(studio: StudioId, member: MemberId, platform: string): Promise<string | undefined>;
  /** Every studio of the file, oldest first. */
  studios(): Promise<{ id: StudioId; name: string }[]>;
}

/** What has become of people: of two that are one now, or of somebody whose words are taken out of everything. */
export type PeopleChange =
  | { kind: 'joined'; studio: StudioId; from: MemberId; into: MemberId }
  | {
      kind: 'erased';
      studio: StudioId;
      /** Who is forgotten; nobody when only a note is taken out. */
      members: readonly MemberId[];
      /** Takes the words out of whatever is remembered of answers. */
      clean<T>(kept: T): T;
    };

/** Lines of actions too long for a button, kept until they expire. */
export interface HeldLines {
  hold(studio: StudioId, line: string, until: Instant): Promise<string>;
  held(id: string, now: Instant): Promise<{ studio: StudioId; line: string } | undefined>;
}

/** A reminder that somebody has taken to say it. */
export interface ClaimedReminder {
  studio: StudioId;
  member: MemberId;
  key: string;
  about: ReminderAbout;
  dueAt: Instant;
  goodUntil: Instant;
  /** A platform takes a repeat with the same nonce for the same message, for some minutes. */
  nonce: string;
  /** How often it has been taken, this time too. */
  tries: number;
  /** An earlier try may have got through. */
  unsureSince?: Instant;
}

/** How a try ended: said; to be tried again, surely or perhaps unsaid; or of no use any more. */
export type ReminderOutcome = { told: true } | { again: Instant; unsure: boolean } | { dropped: true };

/** What is to be said, kept in the file, so that nothing is forgotten and nothing said twice. */
export interface ReminderQueue {
  /** Asks for what comes round again: every studio's sessions now and soon, whatever has become of those before. */
  plan(now: Instant): Promise<void>;
  /** Makes what is due be tried at once: who had taken it is no more, and who could not say it had other voices. */
  reclaim(now: Instant): Promise<void>;
  /** Takes what is due; nobody else gets it before the lease ends. */
  claim(now: Instant, leaseEnds: Instant, most: number): Promise<ClaimedReminder[]>;
  settle(reminder: ClaimedReminder, outcome: ReminderOutcome): Promise<void>;
  /** Tells the keepers, once a week, that somebody cannot be reached. */
  unreachable(studio: StudioId, why: 'closed' | 'gone', now: Instant): Promise<void>;
}
