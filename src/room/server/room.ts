import type { HttpBindings } from '@hono/node-server';
import type { Context } from 'hono';
import { type RoomRefusal, roomWords } from '../../words/platform/roomWords.ts';
import type { Address } from '../access/hosts.ts';
import type { Names } from '../posts/names.ts';
import type { TokenBucket } from '../access/tokenBucket.ts';
import type { PageFiles } from './pageFiles.ts';
import type { RoomPorts, Session } from '../ports.ts';
import type { Posts } from '../posts/posts.ts';
import type { Sessions } from '../access/sessions.ts';
import type { SignIn } from '../access/signIn.ts';

/** Everything that a request to the room may need. */
export interface Room {
  ports: RoomPorts;
  address: Address;
  /** Whether a proxy's word on who asks is taken. */
  trustProxy: boolean;
  hosts: ReadonlySet<string>;
  sessions: Sessions;
  signIn: SignIn;
  posts: Posts;
  names: Names;
  page: PageFiles;
  /** By signed-in phone, and by network address for everybody else. */
  phonePace: TokenBucket;
  addressPace: TokenBucket;
}

export interface RoomEnv {
  Bindings: HttpBindings;
  Variables: { session: Session | undefined; secure: boolean; from: string };
}
export type RoomContext = Context<RoomEnv>;

const statuses: Record<RoomRefusal, 400 | 401 | 403 | 404 | 409 | 413 | 415 | 421 | 429 | 500 | 503> = {
  'wrong-host': 421,
  'wrong-origin': 403,
  'sign-in': 401,
  'not-keeper': 403,
  'not-found': 404,
  'not-json': 415,
  'too-large': 413,
  'bad-request': 400,
  'too-old': 409,
  'too-fast': 429,
  full: 503,
  broken: 500,
};

/** A refusal as a status, a word for programs and a sentence for people; it repeats nothing that was sent. */
export const refuse = (c: RoomContext, why: RoomRefusal, seconds?: number): Response => {
  if (seconds !== undefined) c.header('retry-after', String(seconds));
  return c.json({ why, said: roomWords.refusal[why] }, statuses[why]);
};
