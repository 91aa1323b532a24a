import type { Chart, Command, Desk, Reply, Request } from '../contract/contract.ts';
import type { Log } from '../contract/log.ts';
import type { PeopleChange } from '../studio/logbook/ports.ts';
import type { WireBucket } from './wire.ts';

export type StudioId = Request['studio'];
export type MemberId = Request['member'];
export type Instant = Request['now'];
export type Words = Parameters<Command['about']>[0];

export interface Clock {
  now(): Instant;
  /** An instant, so many milliseconds before now. */
  before(milliseconds: number): Instant;
}

/** A name that a member has claimed in the room. It has no secret after a keeper has released it. */
export interface Claim {
  member: MemberId;
  name: string;
  secret?: string;
}

export interface Session {
  /** A hash of the phone's token; the token itself is not stored. */
  hash: string;
  member: MemberId;
  name: string;
  until: Instant;
}

/** What a code allows: one sign-in, one sign-in as keeper, or the wall board until it is replaced. */
export type CodePurpose = 'join' | 'keeper' | 'board';

/** Everything about signing in that is stored in the database. */
export interface Credentials {
  claims(): Promise<(Claim & { key: string })[]>;
  claim(key: string): Promise<Claim | undefined>;
  /** Claims a name; false if somebody else was first. */
  take(key: string, claim: Required<Claim>): Promise<boolean>;
  /** The member who got this link code on another platform; undefined if it is invalid or has expired. */
  linked(code: string): Promise<MemberId | undefined>;
  /** Claims a name for the member with that link code, and uses the code up. */
  takeLinked(code: string, key: string, claim: Required<Claim>): Promise<'taken' | 'no-code' | 'not-free'>;
  /** Lets a name be claimed again, and ends its member's sessions. */
  release(key: string, member: MemberId, name: string): Promise<void>;
  sessions(): Promise<Session[]>;
  begin(session: Session): Promise<void>;
  end(which: { hash: string } | { member: MemberId } | { allBut: string }): Promise<void>;
  addCode(hash: string, purpose: CodePurpose, until: Instant): Promise<void>;
  /** Whether the code is valid; `spend` uses it up. */
  code(hash: string, purpose: CodePurpose, spend: 'spend' | 'look'): Promise<boolean>;
  endCodes(purpose: CodePurpose): Promise<void>;
  passcode(): Promise<string | undefined>;
  setPasscode(secret: string): Promise<void>;
}

/** A post in the room, as it is stored. */
export interface Post {
  no: number;
  /** The request's idempotency key: the same request is posted once. */
  key: string;
  id: string;
  at: Instant;
  member: MemberId;
  line: string;
  private: boolean;
  reply: Reply;
}

/** Stores recent posts, so that they survive a reload or a restart. */
export interface PostStore {
  latest(most: number): Promise<Post[]>;
  keep(posts: readonly Post[]): Promise<void>;
}

/** What the room needs from the rest of the program. */
export interface RoomPorts {
  desk: Desk;
  words: Words;
  clock: Clock;
  log: Log;
  studio: StudioId;
  studioName: string;
  /** The studio's time zone, for reading and showing times. */
  zone(): Promise<string>;
  /** No passwords: for the demo's own file only. */
  open: boolean;
  credentials: Credentials;
  postStore: PostStore;
  people: {
    /** The member with a claimed name; created if new. */
    memberOf(key: string, name: string): Promise<MemberId>;
    /** All members of the studio, from every platform. */
    all(): Promise<{ id: MemberId; name: string }[]>;
    /** Reports links and erasures; returns a function that unsubscribes. */
    follow(listener: (change: PeopleChange) => void): () => void;
    /** The member that this id stands for now; undefined if unknown or forgotten. */
    standsFor(member: string): Promise<MemberId | undefined>;
    isKeeper(member: MemberId): Promise<boolean>;
    /** False if the studio would be left without a keeper: then nothing changes. */
    setKeeper(member: MemberId, keeper: boolean, by: MemberId): Promise<boolean>;
  };
  board(): Promise<WireBucket[]>;
  /** A chart as SVG, small for the stream or large to look at closely. */
  draw(chart: Chart, theme: 'light' | 'dark', size: 'small' | 'large'): Promise<string>;
}
