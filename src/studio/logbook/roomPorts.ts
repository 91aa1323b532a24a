import type { Instant, MemberId } from '../ids.ts';

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
  /** Whether other processes let people into the same room. */
  isShared: boolean;
  sessions(): Promise<Session[]>;
  /** The session of this hash, while it lasts. */
  session(hash: string): Promise<Session | undefined>;
  begin(session: Session): Promise<void>;
  end(which: { hash: string } | { member: MemberId } | { allBut: string }): Promise<void>;
  addCode(hash: string, purpose: CodePurpose, until: Instant): Promise<void>;
  /** Whether the code is valid; `spend` uses it up. */
  code(hash: string, purpose: CodePurpose, spend: 'spend' | 'look'): Promise<boolean>;
  endCodes(purpose: CodePurpose): Promise<void>;
  /** Takes a try of what may be guessed, counted over all processes; otherwise returns the seconds until the next. */
  mayTry(key: string, pace: TryPace): Promise<Tried>;
  passcode(): Promise<string | undefined>;
  setPasscode(secret: string): Promise<void>;
}

/** Whether it may be tried now, and otherwise in how many seconds. */
export type Tried = { ok: true } | { ok: false; seconds: number };

/** So many tries at once, and then one in every so many milliseconds. */
export interface TryPace {
  atOnce: number;
  every: number;
}

/** A post in the room, as it is stored. */
export interface Post<Reply> {
  no: number;
  /** The request's idempotency key: the same request is posted once. */
  key: string;
  id: string;
  at: Instant;
  member: MemberId;
  line: string;
  private: boolean;
  reply: Reply;
  /** Opens the reply's sealed file, at whichever process a phone asks for it. Not stored. */
  fileKey?: string;
}

/** What several processes on one room have to know of each other. */
export interface RoomNews<Reply> {
  /** The posts after a number, oldest first; `more` when there are more of them. */
  posts: Post<Reply>[];
  more: boolean;
  /** Each of these is another number when something has changed: the logbook, earlier posts, or who is signed in. */
  logbook: number;
  earlier: number;
  sessions: number;
}

/** Stores recent posts, so that they survive a reload or a restart. */
export interface PostStore<Reply> {
  /** Whether other processes post in the same room: then the store numbers the posts. */
  isShared: boolean;
  latest(most: number): Promise<Post<Reply>[]>;
  keep(posts: readonly Post<Reply>[]): Promise<void>;
  /** Keeps a post under the next number; returns the number that its key has. Undefined if its member was forgotten. */
  add(post: Omit<Post<Reply>, 'no'>, sealed?: string): Promise<number | undefined>;
  /** What was sealed with a post, for a few minutes. */
  sealed(no: number): Promise<string | undefined>;
  news(after: number): Promise<RoomNews<Reply>>;
  /** Calls the listener soon after somebody has posted, mostly; returns a function that stops it. */
  hear(listener: () => void): () => void;
}
