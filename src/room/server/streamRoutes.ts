import { RESPONSE_ALREADY_SENT } from '@hono/node-server/utils/response';
import { Hono } from 'hono';
import { EventStream } from './eventStream.ts';
import { maySee, type Posts } from '../posts/posts.ts';
import type { Post, Session } from '../ports.ts';
import { refuse, type Room, type RoomEnv } from './room.ts';
import { wiredOrSkipped } from './startOf.ts';

const mostListening = 1_000;
const mostOfOne = 8;
const mostMissed = 200;

/** The live stream: what was missed, then everything as it is said; what is private goes to its member only. */
export const streamRoutes = (room: Room, listening: Map<EventStream, Session>) =>
  new Hono<RoomEnv>().get('/stream', async (c) => {
    const session = c.get('session');
    if (!session) return refuse(c, 'sign-in');
    const mine = [...listening.values()].filter(({ hash }) => hash === session.hash).length;
    if (listening.size >= mostListening || mine >= mostOfOne) return refuse(c, 'full', 10);
    const asked = Number(c.req.header('last-event-id') ?? c.req.query('after') ?? 0);
    const after = Number.isSafeInteger(asked) && asked > 0 ? asked : 0;
    listen(room, listening, session, after, (onEnd) => new EventStream(c.env.outgoing, onEnd));
    return RESPONSE_ALREADY_SENT;
  });

const listen = (
  room: Room,
  listening: Map<EventStream, Session>,
  session: Session,
  after: number,
  open: (onEnd: () => void) => EventStream,
): void => {
  const { posts } = room;
  let told: Promise<void> = Promise.resolve();
  const tell = (post: Post) => {
    if (!room.sessions.holds(session)) return hearing.close();
    if (!maySee(post, session.member)) return;
    // In order, though a name may have to be looked up first. Where that fails the line is cut: whoever listens comes
    // back and asks for what they missed.
    told = told
      .then(async () => {
        const json = await jsonOf(room, post);
        if (json !== undefined) hearing.send('post', post.no, json);
      })
      .catch((err: unknown) => {
        room.ports.log.error({ err }, 'could not tell a phone what was said; it will ask again');
        hearing.close();
      });
  };
  const stop = posts.listen(tell);
  const unwatch = room.sessions.whenEnded(session, () => hearing.close());
  const hearing = open(() => {
    stop();
    unwatch();
    listening.delete(hearing);
  });
  listening.set(hearing, session);
  for (const post of missed(posts, session, after)) tell(post);
};

const missed = (posts: Posts, { member }: Session, after: number) => posts.seenBy(member, after, mostMissed);

const written = new WeakMap<Post, Promise<string | undefined>>();

/** The same words for everybody who hears them: put together once. */
const jsonOf = (room: Room, post: Post): Promise<string | undefined> => {
  const known = written.get(post);
  if (known) return known;
  const fresh = wiredOrSkipped(room, post).then((wire) => wire && JSON.stringify(wire));
  written.set(post, fresh);
  fresh.catch(() => written.delete(post));
  return fresh;
};
