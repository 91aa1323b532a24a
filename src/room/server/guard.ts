import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { clientAddress } from '../access/clientAddress.ts';
import { readRoomCookie } from './cookies.ts';
import { originOf } from '../access/hosts.ts';
import { refuse, type Room, type RoomEnv } from './room.ts';

const mostBody = 16 * 1024;

const methods = ['GET', 'HEAD', 'POST'];

const csp = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
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

/** Before anything else: who asks, how often, and by which name of ours. */
export const guard =
  (room: Room): MiddlewareHandler<RoomEnv> =>
  async (c, next) => {
    for (const [name, value] of Object.entries(headers)) c.header(name, value);
    const { host } = c.env.incoming.headers;
    const name = host?.toLowerCase() ?? '';
    const secure = originOf(name, room.address).startsWith('https:');
    const session = room.sessions.of(readRoomCookie(c, 'room', secure));
    const from = clientAddress(c.env.incoming, room.trustProxy);
    const now = room.ports.clock.now();
    // A studio's phones share one address: those signed in are not slowed by what else comes from there.
    const pace = session ? room.phonePace.take(session.hash, now) : room.addressPace.take(from, now);
    if (!pace.ok) return refuse(c, 'too-fast', pace.seconds);
    if (!room.hosts.has(name)) return refuse(c, 'wrong-host');
    if (!methods.includes(c.req.method)) {
      c.header('allow', methods.join(', '));
      return refuse(c, 'wrong-method');
    }
    c.set('session', session);
    c.set('secure', secure);
    c.set('from', from);
    return next();
  };

/** Before every write: from our own page only, as JSON, and no longer than a line can be. */
export const guardWrite = (room: Room): MiddlewareHandler<RoomEnv> => {
  const limit = bodyLimit({ maxSize: mostBody, onError: (c) => refuse(c, 'too-large') });
  return async (c, next) => {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    const host = c.env.incoming.headers.host?.toLowerCase() ?? '';
    if (c.req.header('origin') !== originOf(host, room.address)) return refuse(c, 'wrong-origin');
    const type = c.req.header('content-type') ?? '';
    if (!/^application\/json(?:\s*;.*)?$/i.test(type)) return refuse(c, 'not-json');
    return limit(c, next);
  };
};

/** Before whatever may cost something: a member's requests one after another, and no more than their share. A passcode has a pace of its own. */
export const fairly =
  (room: Room): MiddlewareHandler<RoomEnv> =>
  async (c, next) => {
    const session = c.get('session');
    if (!session || c.req.path.startsWith('/page/') || c.req.path === '/api/door/passcode') return next();
    const done = await room.shares.run(session.member, next);
    return done.ok ? undefined : refuse(c, 'too-fast', done.seconds);
  };
