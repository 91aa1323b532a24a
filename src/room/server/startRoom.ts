import { definedOnly } from '../../definedOnly.ts';
import { serve, type ServerType } from '@hono/node-server';
import { Hono } from 'hono';
import { once } from 'node:events';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Desk, Voice } from '../../contract/desk.ts';
import { troubleOf } from '../../contract/trouble.ts';
import { FairShare } from '../access/fairShare.ts';
import { followPeople } from './followPeople.ts';
import { fairly, guard, guardWrite } from './guard.ts';
import type { Listening } from './eventStream.ts';
import { allowedHosts, shownUrl, type Address } from '../access/hosts.ts';
import { limitSockets } from './limitSockets.ts';
import { BucketNamesCache } from '../posts/bucketNames.ts';
import { Names } from '../posts/names.ts';
import { Passcode } from '../access/passcode.ts';
import { Turns } from '../access/turns.ts';
import { TokenBucket } from '../access/tokenBucket.ts';
import { pageFiles } from './pageFiles.ts';
import type { RoomPorts } from '../ports.ts';
import { OwnPosts } from '../posts/ownPosts.ts';
import type { Elsewhere } from '../posts/posts.ts';
import { SharedPosts } from '../posts/sharedPosts.ts';
import { paces } from '../access/pace.ts';
import { refuse, type Room, type RoomEnv } from './room.ts';
import { roomVoice } from './roomVoice.ts';
import { boardRoutes } from './boardRoutes.ts';
import { keeperRoutes, makeCode, signInRoutes } from './signInRoutes.ts';
import { notebookRoutes } from './notebookRoutes.ts';
import { pageRoutes } from './pageRoutes.ts';
import { postRoutes } from './postRoutes.ts';
import { sayRoutes } from './sayRoutes.ts';
import { streamRoutes } from './streamRoutes.ts';
import { postingDesk } from './postingDesk.ts';
import { Sessions } from '../access/sessions.ts';
import { SignIn } from '../access/signIn.ts';

export interface RoomSettings {
  bind: string;
  /** 0 takes any free port. */
  port: number;
  url?: string;
  trustProxy?: boolean;
  /** A secret of this installation, for the tokens of phones that have signed in before. */
  pepper: string;
}

export interface RunningRoom {
  url: string;
  port: number;
  voice: Voice;
  phonesListening(): number;
  /** Wraps the desk for another platform, so that what is logged there is also posted in the room. */
  postingDesk(desk: Desk): Desk;
  /** An address that signs one phone in, or makes its user the first keeper. */
  invitation(purpose: 'join' | 'keeper'): Promise<string>;
  stop(): Promise<void>;
}

/** How long requests under way may take when the room closes. */
const grace = 1_200;

const portOf = async (server: ServerType): Promise<number> => {
  // Rejects if the server has an error first.
  await once(server, 'listening');
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the room listens on no port');
  return address.port;
};

const routes = (room: Room, listening: Listening) =>
  new Hono<RoomEnv>()
    .use(async (c, next) => {
      await next();
      if (c.res.status >= 400) room.ports.refused?.(c.res.status);
    })
    .use(guard(room))
    .use(guardWrite(room))
    .use(fairly(room))
    .use('/api/*', async (c, next) => {
      c.header('cache-control', 'no-store');
      return next();
    })
    .route('/', pageRoutes(room))
    .route('/api', signInRoutes(room, listening))
    .route('/api', sayRoutes(room))
    .route('/api', streamRoutes(room, listening))
    .route('/api', boardRoutes(room))
    .route('/api', postRoutes(room))
    .route('/api/door', keeperRoutes(room))
    .route('/api/notebook', notebookRoutes(room))
    .notFound((c) => refuse(c, 'not-found'))
    .onError((error, c) => {
      room.ports.log.error({ err: error }, 'a request to the room broke');
      const trouble = troubleOf(error);
      return refuse(c, trouble === 'full' ? 'disk-full' : trouble === 'crowded' ? 'full' : 'broken');
    });

export const startRoom = async (ports: RoomPorts, settings: RoomSettings): Promise<RunningRoom> => {
  const { bind, port, url, trustProxy = false, pepper } = settings;
  const sessions = await Sessions.open(ports);
  const turns = new Turns();
  const pace = paces(ports.credentials, pepper);
  const passcode = new Passcode(ports, { turns, pace });
  const listening: Listening = new Map();
  const names = new Names(ports);
  const buckets = new BucketNamesCache(ports);
  const address: Address = { bind, port, ...definedOnly({ url }) };
  const elsewhere: Elsewhere = {
    logged: () => {
      names.forget();
      buckets.forget();
    },
    sessions: () =>
      void sessions
        .readAgain()
        .catch((err: unknown) => ports.log.error({ err }, 'sessions could not be read')),
  };
  const room: Room = {
    ports,
    address,
    trustProxy,
    hosts: allowedHosts(address),
    sessions,
    passcode,
    signIn: new SignIn(ports, { sessions, passcode, turns, pepper, pace }),
    posts: await (ports.postStore.isShared ? SharedPosts.open(ports, elsewhere) : OwnPosts.open(ports)),
    names,
    buckets,
    page: pageFiles(),
    phoneLimit: new TokenBucket(10, 60),
    addressLimit: new TokenBucket(20, 300),
    shares: new FairShare(),
  };
  room.posts.recent.listen((post) => room.buckets.heard(post));
  const unfollow = ports.people.follow((change) => {
    try {
      followPeople(room, listening, change);
    } catch (err) {
      // It is logged, so its member gets the reply.
      ports.log.error({ err }, 'the room could not follow what became of its people');
    }
  });
  const server = serve({
    fetch: routes(room, listening).fetch,
    hostname: bind,
    port,
    serverOptions: { headersTimeout: 10_000, requestTimeout: 20_000, maxHeaderSize: 8_192 },
  });
  limitSockets(server, trustProxy);
  const taken = await portOf(server).catch((error: unknown) => {
    unfollow();
    room.posts.stop();
    throw error;
  });
  address.port = taken;
  room.hosts = allowedHosts(address);
  const shown = shownUrl(address);
  return {
    url: shown,
    port: taken,
    voice: roomVoice(room),
    phonesListening: () => listening.size,
    postingDesk: (desk) =>
      postingDesk(desk, ports.log, async (studio, said) => {
        if (studio === ports.studio) await room.posts.say(said);
      }),
    invitation: async (purpose) => `${shown}/#${purpose}=${await makeCode(room, purpose)}`,
    stop: async () => {
      unfollow();
      for (const stream of listening.keys()) stream.close();
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      // Requests under way are answered; `close` has ended the idle connections.
      await Promise.race([closed, sleep(grace, undefined, { ref: false })]);
      if ('closeAllConnections' in server) server.closeAllConnections();
      await closed;
      await room.posts.kept();
      room.posts.stop();
    },
  };
};
