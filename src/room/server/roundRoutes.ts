import { Hono } from 'hono';
import { refuse, type Room, type RoomEnv } from './room.ts';
import { roundReply } from './roundReply.ts';

/** What waits for whoever is signed in. */
export const roundRoutes = (room: Room) =>
  new Hono<RoomEnv>().get('/round', async (c) => {
    const session = c.get('session');
    return session ? c.json(await roundReply(room, session)) : refuse(c, 'sign-in');
  });
