import { Hono } from 'hono';
import { refuse, type Room, type RoomEnv } from './room.ts';
import { tokenHash } from '../access/secrets.ts';
import type { WireBoard } from '../wire.ts';

/** The wall's figures: for whoever is signed in, or holds the studio's token for its wall. It can do nothing else. */
export const boardRoutes = (room: Room) =>
  new Hono<RoomEnv>().get('/board', async (c) => {
    const { ports } = room;
    const [, token] = /^Bearer ([\w-]{43})$/.exec(c.req.header('authorization') ?? '') ?? [];
    const may =
      ports.open ||
      c.get('session') !== undefined ||
      (token !== undefined && (await ports.door.code(tokenHash(token), 'board', 'look')));
    if (!may) return refuse(c, 'sign-in');
    const board: WireBoard = {
      studio: ports.studioName,
      now: ports.clock.now(),
      zone: await ports.zone(),
      buckets: await ports.board(),
    };
    return c.json(board);
  });
