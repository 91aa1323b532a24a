import { Hono } from 'hono';
import { roomPageWords } from '../../words/platform/roomPageWords.ts';
import { refuse, type Room, type RoomContext, type RoomEnv } from './room.ts';
import { shell } from './shell.ts';
import { startOf } from './startOf.ts';

const roomPage = async (room: Room, c: RoomContext): Promise<Response> => {
  const start = await startOf(room, c.get('session'));
  c.header('cache-control', 'no-store');
  return c.html(shell(room.page, { script: 'main.js', title: start.studio, start }));
};

export const pageRoutes = (room: Room) =>
  new Hono<RoomEnv>()
    .get('/', (c) => roomPage(room, c))
    // The code on a bucket's label. The page reads the number from its address.
    .get('/bucket/:no{[0-9]{1,9}}', (c) => roomPage(room, c))
    .get('/board', (c) => {
      c.header('cache-control', 'no-store');
      return c.html(shell(room.page, { script: 'board.js', title: roomPageWords.board.title }));
    })
    .get('/page/:version/:name{.+}', (c) => {
      const file = room.page.get(c.req.param('name'));
      if (!file) return refuse(c, 'not-found');
      const current = c.req.param('version') === room.page.version;
      c.header('cache-control', current ? 'public, max-age=31536000, immutable' : 'no-store');
      c.header('content-type', file.type);
      c.header('vary', 'accept-encoding');
      const isZipped = /\bgzip\b/.test(c.req.header('accept-encoding') ?? '');
      if (isZipped) c.header('content-encoding', 'gzip');
      return c.body(new Uint8Array(isZipped ? file.gzip : file.plain));
    });
