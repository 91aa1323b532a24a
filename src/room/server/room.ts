import type { HttpBindings } from '@hono/node-server';
import type { Context } from 'hono';
import { type RoomRefusal, roomWords } from '../../words/platform/roomWords.ts';
import type { Address } from '../access/hosts.ts';
import type { FairShare } from '../access/fairShare.ts';
import type { Passcode } from '../access/passcode.ts';
import type { BucketNamesCache } from '../posts/bucketNames.ts';
import type { Names } from '../posts/names.ts';
import type { TokenBucket } from '../access/tokenBucket.ts';
import type { PageFiles } from './pageFiles.ts';
import type { RoomPorts, Session } from '../ports.ts';
import type { Posts } from '../posts/posts.ts';
import type { Sessions } from '../access/sessions.ts';
import type { SignIn } from '../access/signIn.ts';

/** What the room's routes share. */
export interface Room {
  ports: RoomPorts;
  address: Address;
  /** Whether X-Forwarded-For is trusted. */
  trustProxy: boolean;
  hosts: ReadonlySet<string>;
  sessions: Sessions;
  signIn: SignIn;
  passcode: Passcode;
  posts: Posts;
  names: Names;
  buckets: BucketNamesCache;
  page: PageFiles;
  /** Rate limits: by phone for those signed in, by network address for others. */
  phoneLimit: TokenBucket;
  addressLimit: TokenBucket;
  /** The cost of each member's requests. */
  shares: FairShare;
}

export interface RoomEnv {
  Bindings: HttpBindings;
  Variables: { session: Session | undefined; secure: boolean; from: string };
}
export type RoomContext = Context<RoomEnv>;

const statuses: Record<
  RoomRefusal,
  400 | 401 | 403 | 404 | 405 | 409 | 413 | 415 | 421 | 429 | 500 | 503 | 507
> = {
  'wrong-host': 421,
  'wrong-origin': 403,
  'sign-in': 401,
  'not-keeper': 403,
  'not-found': 404,
  'not-json': 415,
  'too-large': 413,
  'bad-request': 400,
  'too-old': 409,
  'over-a-year-old': 400,
  'wrong-method': 405,
  'too-fast': 429,
  full: 503,
  'disk-full': 507,
  broken: 500,
};

/** A refusal: a status, a code for programs, and a sentence for people. It repeats nothing from the request. */
export const refuse = (c: RoomContext, why: RoomRefusal, seconds?: number): Response => {
  if (seconds !== undefined) c.header('retry-after', String(seconds));
  return c.json({ why, said: roomWords.refusal[why] }, statuses[why]);
};
