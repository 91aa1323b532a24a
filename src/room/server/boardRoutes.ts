import { Hono } from 'hono';
import { refuse, type Room, type RoomEnv } from './room.ts';
import { tokenHash } from '../access/secrets.ts';
import type { WireBoard } from '../wire.ts';

/** The wall board's data, for signed-in members and for the board's token, which allows nothing else. */
export const boardRoutes = (room: Room) =>
  new Hono<RoomEnv>().get('/board', async (c) => {
    const { ports } = room;
    const [, token] = /^Bearer ([\w-]{43})$/.exec(c.req.header('authorization') ?? '') ?? [];
    const may =
      ports.open ||
      c.get('session') !== undefined ||
      (token !== undefined && (await ports.credentials.code(tokenHash(token), 'board', 'look')));
    if (!may) return refuse(c, 'sign-in');
    const { name, zone } = await ports.setUp();
    const board: WireBoard = {
      studio: name,
      now: ports.clock.now(),
      zone,
      buckets: await ports.board(),
    };
    return c.json(board);
  });
