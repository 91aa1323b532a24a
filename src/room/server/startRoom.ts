import { definedOnly } from '../../definedOnly.ts';
import { serve, type ServerType } from '@hono/node-server';
import { Hono } from 'hono';
import type { AddressInfo } from 'node:net';
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
import { PageFiles } from './pageFiles.ts';
import type { RoomPorts } from '../ports.ts';
import { openPosts } from '../posts/openPosts.ts';
import { paces } from '../access/pace.ts';
import { refuse, type Room, type RoomEnv } from './room.ts';
import { roomVoice } from './roomVoice.ts';
import { boardRoutes } from './boardRoutes.ts';
import { keeperRoutes, makeCode, signInRoutes } from './signInRoutes.ts';
import { notebookRoutes } from './notebookRoutes.ts';
import { pageRoutes } from './pageRoutes.ts';
import { postRoutes } from './postRoutes.ts';
import { roundRoutes } from './roundRoutes.ts';
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

const listening = (server: ServerType) =>
  new Promise<AddressInfo>((resolve, reject) => {
    server.once('error', reject);
    server.once('listening', () => {
      const address = server.address();
      if (address !== null && typeof address === 'object') resolve(address);
      else reject(new Error('the room listens on no port'));
    });
  });

const routes = (room: Room, heard: Listening) =>
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
    .route('/api', signInRoutes(room, heard))
    .route('/api', sayRoutes(room))
    .route('/api', streamRoutes(room, heard))
    .route('/api', boardRoutes(room))
    .route('/api', roundRoutes(room))
    .route('/api', postRoutes(room))
    .route('/api/door', keeperRoutes(room))
    .route('/api/notebook', notebookRoutes(room))
    .notFound((c) => refuse(c, 'not-found'))
    .onError((error, c) => {
      room.ports.log.error({ err: error }, 'a request to the room broke');
      const trouble = troubleOf(error);
      return refuse(c, trouble === 'full' ? 'disk-full' : trouble === 'crowded' ? 'full' : 'broken');
    });

/** Starts the room's server: the page, the event stream, and sign-in. */
export const startRoom = async (ports: RoomPorts, settings: RoomSettings): Promise<RunningRoom> => {
  const { bind, port, url, trustProxy = false, pepper } = settings;
  const sessions = await Sessions.open(ports);
  const turns = new Turns();
  const pace = paces(ports.credentials, pepper);
  const passcode = new Passcode(ports, { turns, pace });
  const heard: Listening = new Map();
  const names = new Names(ports);
  const buckets = new BucketNamesCache(ports);
  const address: Address = { bind, port, ...definedOnly({ url }) };
  const room: Room = {
    ports,
    address,
    trustProxy,
    hosts: allowedHosts(address),
    sessions,
    passcode,
    signIn: new SignIn(ports, { sessions, passcode, turns, pepper, pace }),
    posts: await openPosts(ports, {
      logged: () => {
        names.forget();
        buckets.forget();
      },
      sessions: () =>
        void sessions
          .readAgain()
          .catch((err: unknown) => ports.log.error({ err }, 'sessions could not be read')),
    }),
    names,
    buckets,
    page: PageFiles.load(),
    phoneLimit: new TokenBucket(10, 60),
    addressLimit: new TokenBucket(20, 300),
    shares: new FairShare(),
  };
  room.posts.recent.listen((post) => room.buckets.heard(post));
  const unfollow = ports.people.follow((change) => {
    try {
      followPeople(room, heard, change);
    } catch (err) {
      // It is logged, so its member gets the reply.
      ports.log.error({ err }, 'the room could not follow what became of its people');
    }
  });
  const server = serve({
    fetch: routes(room, heard).fetch,
    hostname: bind,
    port,
    serverOptions: { headersTimeout: 10_000, requestTimeout: 20_000, maxHeaderSize: 8_192 },
  });
  limitSockets(server, trustProxy);
  const { port: taken } = await listening(server).catch((error: unknown) => {
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
    phonesListening: () => heard.size,
    postingDesk: (desk) =>
      postingDesk(desk, ports.log, async (studio, said) => {
        if (studio === ports.studio) await room.posts.say(said);
      }),
    invitation: async (purpose) => `${shown}/#${purpose}=${await makeCode(room, purpose)}`,
    stop: async () => {
      unfollow();
      for (const stream of heard.keys()) stream.close();
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
