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
  /** So many milliseconds before now. */
  before(milliseconds: number): Instant;
}

/** A name that a member has claimed in the room; without a secret when a keeper has released it. */
export interface Claim {
  member: MemberId;
  name: string;
  secret?: string;
}

export interface Session {
  /** Of the token that the phone holds: the token itself is kept nowhere. */
  hash: string;
  member: MemberId;
  name: string;
  until: Instant;
}

/** What a code opens: the room once, the keeper's place once, or the board for as long as it stands. */
export type CodePurpose = 'join' | 'keeper' | 'board';

/** Everything that decides who comes in, kept in the studio's file. */
export interface Credentials {
  claims(): Promise<(Claim & { key: string })[]>;
  claim(key: string): Promise<Claim | undefined>;
  /** Takes a name; false when somebody else was quicker. */
  take(key: string, claim: Required<Claim>): Promise<boolean>;
  /** Whose code it is that another platform gave out; undefined when it holds no longer. */
  linked(code: string): Promise<MemberId | undefined>;
  /** Takes a name for the member of such a code, and spends it. */
  takeLinked(code: string, key: string, claim: Required<Claim>): Promise<'taken' | 'no-code' | 'not-free'>;
  /** Lets a name be claimed anew, and ends its member's sessions. */
  release(key: string, member: MemberId, name: string): Promise<void>;
  sessions(): Promise<Session[]>;
  begin(session: Session): Promise<void>;
  end(which: { hash: string } | { member: MemberId }): Promise<void>;
  addCode(hash: string, purpose: CodePurpose, until: Instant): Promise<void>;
  /** Whether there is such a code; `spend` makes it the last time. */
  code(hash: string, purpose: CodePurpose, spend: 'spend' | 'look'): Promise<boolean>;
  endCodes(purpose: CodePurpose): Promise<void>;
  passcode(): Promise<string | undefined>;
  setPasscode(secret: string): Promise<void>;
}

/** One thing said in the room, as it is kept. */
export interface Post {
  no: number;
  /** The request's key: the same request is never said twice. */
  key: string;
  id: string;
  at: Instant;
  member: MemberId;
  line: string;
  private: boolean;
  reply: Reply;
}

/** What was said lately, kept so that a reload or a restart finds it again. */
export interface PostShelf {
  latest(most: number): Promise<Post[]>;
  keep(posts: readonly Post[]): Promise<void>;
}

/** What the room needs of the rest of the house. */
export interface RoomPorts {
  desk: Desk;
  words: Words;
  clock: Clock;
  log: Log;
  studio: StudioId;
  studioName: string;
  /** The studio's time zone, in which times are read and shown. */
  zone(): Promise<string>;
  /** Free of passwords: the demo's own file, and no other. */
  open: boolean;
  door: Credentials;
  shelf: PostShelf;
  people: {
    /** The member of a claimed name; made when new. */
    memberOf(key: string, name: string): Promise<MemberId>;
    /** Everybody whom the studio knows, from whatever platform. */
    all(): Promise<{ id: MemberId; name: string }[]>;
    /** Tells what becomes of people; answers how to stop that. */
    follow(listener: (change: PeopleChange) => void): () => void;
    /** Who that is by now; undefined when nobody is, or they are forgotten. */
    standsFor(member: string): Promise<MemberId | undefined>;
    isKeeper(member: MemberId): Promise<boolean>;
    setKeeper(member: MemberId, keeper: boolean, by: MemberId): Promise<void>;
  };
  board(): Promise<WireBucket[]>;
  /** A chart as an SVG: for a phone's width, or to look into. */
  draw(chart: Chart, theme: 'light' | 'dark', size: 'small' | 'large'): Promise<string>;
}
