import type { Instant, MemberId } from '../ids.ts';

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
  end(which: { hash: string } | { member: MemberId } | { allBut: string }): Promise<void>;
  addCode(hash: string, purpose: CodePurpose, until: Instant): Promise<void>;
  /** Whether there is such a code; `spend` makes it the last time. */
  code(hash: string, purpose: CodePurpose, spend: 'spend' | 'look'): Promise<boolean>;
  endCodes(purpose: CodePurpose): Promise<void>;
  passcode(): Promise<string | undefined>;
  setPasscode(secret: string): Promise<void>;
}

/** One thing said in the room, as it is kept. */
export interface Post<Reply> {
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
export interface PostShelf<Reply> {
  latest(most: number): Promise<Post<Reply>[]>;
  keep(posts: readonly Post<Reply>[]): Promise<void>;
}
