import { serve, type ServerType } from '@hono/node-server';
import { Hono } from 'hono';
import type { AddressInfo } from 'node:net';
import type { Desk, Voice } from '../../contract/contract.ts';
import { followPeople } from './followPeople.ts';
import { guard, guardWrite } from './guard.ts';
import type { EventStream } from './eventStream.ts';
import { allowedHosts, shownUrl, type Address } from '../access/hosts.ts';
import { Names } from '../posts/names.ts';
import { TokenBucket } from '../access/tokenBucket.ts';
import { PageFiles } from './pageFiles.ts';
import type { RoomPorts, Session } from '../ports.ts';
import { Posts } from '../posts/posts.ts';
import { refuse, type Room, type RoomEnv } from './room.ts';
import { roomVoice } from './roomVoice.ts';
import { boardRoutes } from './boardRoutes.ts';
import { keeperRoutes, makeCode, signInRoutes } from './signInRoutes.ts';
import { pageRoutes } from './pageRoutes.ts';
import { postRoutes } from './postRoutes.ts';
import { sayRoutes } from './sayRoutes.ts';
import { streamRoutes } from './streamRoutes.ts';
import { overheard } from './overheard.ts';
import { Sessions } from '../access/sessions.ts';
import { SignIn } from '../access/signIn.ts';

export interface RoomSettings {
  bind: string;
  /** 0 takes any that is free. */
  port: number;
  url?: string;
  trustProxy?: boolean;
  /** Known to this installation only; marks phones that have been here. */
  pepper: string;
}

export interface RunningRoom {
  url: string;
  port: number;
  voice: Voice;
  /** The desk as another platform uses it: what is logged there is heard in the room too. */
  overheard(desk: Desk): Desk;
  /** An address that lets one phone in, or makes its holder the first keeper. */
  invitation(purpose: 'join' | 'keeper'): Promise<string>;
  stop(): Promise<void>;
}

const listening = (server: ServerType) =>
  new Promise<AddressInfo>((resolve, reject) => {
    server.once('error', reject);
    server.once('listening', () => {
      const address = server.address();
      if (address !== null && typeof address === 'object') resolve(address);
      else reject(new Error('the room listens on no port'));
    });
  });

const routes = (room: Room, heard: Map<EventStream, Session>) =>
  new Hono<RoomEnv>()
    .use(guard(room))
    .use(guardWrite(room))
    .use('/api/*', async (c, next) => {
      c.header('cache-control', 'no-store');
      return next();
    })
    .route('/', pageRoutes(room))
    .route('/api', signInRoutes(room))
    .route('/api', sayRoutes(room))
    .route('/api', streamRoutes(room, heard))
    .route('/api', boardRoutes(room))
    .route('/api', postRoutes(room))
    .route('/api/door', keeperRoutes(room))
    .notFound((c) => refuse(c, 'not-found'))
    .onError((error, c) => {
      room.ports.log.error({ err: error }, 'a request to the room broke');
      return refuse(c, 'broken');
    });

/** Opens the room: the page, the live stream, and the way in. */
export const startRoom = async (ports: RoomPorts, settings: RoomSettings): Promise<RunningRoom> => {
  const { bind, port, url, trustProxy = false, pepper } = settings;
  const sessions = await Sessions.open(ports);
  const heard = new Map<EventStream, Session>();
  const address: Address = { bind, port, ...(url !== undefined && { url }) };
  const room: Room = {
    ports,
    address,
    trustProxy,
    hosts: allowedHosts(address),
    sessions,
    signIn: new SignIn(ports, sessions, pepper),
    posts: await Posts.open(ports),
    names: new Names(ports),
    page: PageFiles.load(),
    phonePace: new TokenBucket(10, 60),
    addressPace: new TokenBucket(20, 300),
  };
  const unfollow = ports.people.follow((change) => {
    try {
      followPeople(room, heard, change);
    } catch (err) {
      // What is done is done, and whoever did it is told so.
      ports.log.error({ err }, 'the room could not follow what became of its people');
    }
  });
  const server = serve({
    fetch: routes(room, heard).fetch,
    hostname: bind,
    port,
    serverOptions: { headersTimeout: 10_000, requestTimeout: 20_000, maxHeaderSize: 8_192 },
  });
  const { port: taken } = await listening(server).catch((error: unknown) => {
    unfollow();
    throw error;
  });
  address.port = taken;
  room.hosts = allowedHosts(address);
  const shown = shownUrl(address);
  return {
    url: shown,
    port: taken,
    voice: roomVoice(room),
    overheard: (desk) => overheard(desk, room),
    invitation: async (purpose) => `${shown}/#${purpose}=${await makeCode(room, purpose)}`,
    stop: async () => {
      unfollow();
      for (const hearing of heard.keys()) hearing.close();
      await new Promise<void>((resolve) => {
        server.close(() => resolve());
        if ('closeAllConnections' in server) server.closeAllConnections();
      });
      await room.posts.kept();
    },
  };
};
