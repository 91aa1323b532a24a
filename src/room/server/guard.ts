import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { clientAddress } from '../access/clientAddress.ts';
import { readRoomCookie } from './cookies.ts';
import { originOf } from '../access/hosts.ts';
import { refuse, type Room, type RoomEnv } from './room.ts';

const mostBody = 16 * 1024;
/** Half a megabyte of an old notebook, in base64. */
const mostNotebook = 720 * 1024;

const methods = ['GET', 'HEAD', 'POST'];

const csp = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "frame-src 'self'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
].join('; ');

const headers = {
  'content-security-policy': csp,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=()',
};

/** Before every request: checks the Host header, the address and its rate. */
export const guard =
  (room: Room): MiddlewareHandler<RoomEnv> =>
  async (c, next) => {
    for (const [name, value] of Object.entries(headers)) c.header(name, value);
    const { host } = c.env.incoming.headers;
    const name = host?.toLowerCase() ?? '';
    const secure = originOf(name, room.address).startsWith('https:');
    const token = readRoomCookie(c, 'room', secure);
    const seen = room.sessions.seen(token);
    const from = clientAddress(c.env.incoming, room.trustProxy);
    const now = room.ports.clock.now();
    // A studio's phones share one address, so signed-in members have limits of their own.
    const limit = seen ? room.phoneLimit.take(seen.hash, now) : room.addressLimit.take(from, now);
    if (!limit.ok) return refuse(c, 'too-fast', limit.seconds);
    if (!room.hosts.has(name)) return refuse(c, 'wrong-host');
    if (!methods.includes(c.req.method)) {
      c.header('allow', methods.join(', '));
      return refuse(c, 'wrong-method');
    }
    c.set('session', await room.sessions.of(token));
    c.set('secure', secure);
    c.set('from', from);
    return next();
  };

/** Before every write: it must come from our own origin, be JSON, and be no longer than a line, or a notebook. */
export const guardWrite = (room: Room): MiddlewareHandler<RoomEnv> => {
  const atMost = (maxSize: number) => bodyLimit({ maxSize, onError: (c) => refuse(c, 'too-large') });
  const [limit, ofNotebook] = [atMost(mostBody), atMost(mostNotebook)];
  return async (c, next) => {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    const host = c.env.incoming.headers.host?.toLowerCase() ?? '';
    if (c.req.header('origin') !== originOf(host, room.address)) return refuse(c, 'wrong-origin');
    const type = c.req.header('content-type') ?? '';
    if (!/^application\/json(?:\s*;.*)?$/i.test(type)) return refuse(c, 'not-json');
    // Only a keeper's: nobody else's is read.
    const session = c.req.path === '/api/notebook' ? c.get('session') : undefined;
    const isKeepers = session && (await room.ports.people.isKeeper(session.member));
    return isKeepers ? ofNotebook(c, next) : limit(c, next);
  };
};

/** Before costly work: one request of a member at a time, within their fair share. A passcode has a pace of its own. */
export const fairly =
  (room: Room): MiddlewareHandler<RoomEnv> =>
  async (c, next) => {
    const session = c.get('session');
    if (!session || c.req.path.startsWith('/page/') || c.req.path === '/api/door/passcode') return next();
    const done = await room.shares.run(session.member, next);
    return done.ok ? undefined : refuse(c, 'too-fast', done.seconds);
  };
