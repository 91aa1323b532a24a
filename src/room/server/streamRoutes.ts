import { RESPONSE_ALREADY_SENT } from '@hono/node-server/utils/response';
import { Hono } from 'hono';
import type { ServerResponse } from 'node:http';
import { EventStream, type Listening } from './eventStream.ts';
import { maySee } from '../posts/recentPosts.ts';
import type { Post, Session } from '../ports.ts';
import { refuse, signedIn, type Room, type RoomEnv } from './room.ts';
import { postForPhoneOrSkipped } from './startOf.ts';

const mostListening = 1_000;
const mostOfMember = 5;
const mostOfAddress = 20;
const mostMissed = 200;

/** The event stream: missed posts first, then new ones. Private posts go to their member only. */
export const streamRoutes = (room: Room, listening: Listening) =>
  new Hono<RoomEnv>().get('/stream', signedIn, async (c) => {
    const session = c.get('session');
    if (c.req.method === 'HEAD') return c.body(null, 200, { 'content-type': 'text/event-stream' });
    const from = c.get('from');
    const others = [...listening.values()];
    const mine = others.filter((one) => one.session.member === session.member).length;
    const here = others.filter((one) => one.from === from).length;
    if (listening.size >= mostListening || mine >= mostOfMember || here >= mostOfAddress)
      return refuse(c, 'full', 10);
    const asked = Number(c.req.header('last-event-id') ?? c.req.query('after') ?? 0);
    const after = Number.isSafeInteger(asked) && asked > 0 ? asked : 0;
    await room.posts.caughtUp();
    listen(room, listening, { session, from, out: c.env.outgoing }, after);
    return RESPONSE_ALREADY_SENT;
  });

const listen = (
  room: Room,
  listening: Listening,
  { session, from, out }: { session: Session; from: string; out: ServerResponse },
  after: number,
): void => {
  const { posts } = room;
  let told: Promise<void> = Promise.resolve();
  const tell = (post: Post) => {
    if (!room.sessions.holds(session)) return stream.close();
    if (!maySee(post, session.member)) return;
    // Posts are sent in order, although a name may need a lookup. If that fails, the stream is closed, and the phone
    // reconnects and asks for missed posts.
    told = told
      .then(async () => {
        const json = await jsonOf(room, post);
        if (json !== undefined) stream.send('post', post.no, json);
      })
      .catch((err: unknown) => {
        stream.close();
        room.ports.log.error({ err }, 'could not tell a phone what was said; it will ask again');
      })
      // The log may be what is broken.
      .catch(() => undefined);
  };
  const stop = posts.recent.listen(tell);
  const unwatch = room.sessions.whenEnded(session, () => stream.close());
  const stream = new EventStream(out, () => {
    stop();
    unwatch();
    listening.delete(stream);
  });
  listening.set(stream, { session, from });
  for (const post of posts.recent.seenBy(session.member, after, mostMissed)) tell(post);
};

const jsonByPost = new WeakMap<Post, Promise<string | undefined>>();

/** The JSON of a post, built once for all listeners. */
const jsonOf = (room: Room, post: Post): Promise<string | undefined> => {
  const known = jsonByPost.get(post);
  if (known) return known;
  const fresh = postForPhoneOrSkipped(room, post).then((wire) => wire && JSON.stringify(wire));
  jsonByPost.set(post, fresh);
  fresh.catch(() => jsonByPost.delete(post));
  return fresh;
};
