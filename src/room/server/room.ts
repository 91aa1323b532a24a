import type { HttpBindings } from '@hono/node-server';
import type { Context, MiddlewareHandler } from 'hono';
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

const statuses = {
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
} as const satisfies Record<RoomRefusal, number>;

/** A refusal: a status, a code for programs, and a sentence for people. It repeats nothing from the request. */
export const refuse = (c: Context, why: RoomRefusal, seconds?: number): Response => {
  if (seconds !== undefined) c.header('retry-after', String(seconds));
  return c.json({ why, said: roomWords.refusal[why] }, statuses[why]);
};

interface SignedInEnv extends RoomEnv {
  Variables: RoomEnv['Variables'] & { session: Session };
}

/** Before it is known that somebody is signed in. */
const sessionOf = (c: Context<SignedInEnv>): Session | undefined => c.get('session');

export const signedIn: MiddlewareHandler<SignedInEnv> = async (c, next) =>
  sessionOf(c) ? next() : refuse(c, 'sign-in');

export const keepersOnly =
  ({ ports }: Room): MiddlewareHandler<SignedInEnv> =>
  async (c, next) => {
    const session = sessionOf(c);
    if (!session) return refuse(c, 'sign-in');
    return (await ports.people.isKeeper(session.member)) ? next() : refuse(c, 'not-keeper');
  };
