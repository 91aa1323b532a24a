import { Hono } from 'hono';
import type { Post } from '../ports.ts';
import { refuse, type Room, type RoomContext, type RoomEnv } from './room.ts';

/** A content security policy under which nothing in a picture or a file can run or load anything. */
const inertCsp = "default-src 'none'; style-src 'unsafe-inline'; sandbox";

const requestedPost = ({ posts }: Room, c: RoomContext): Post | undefined => {
  const session = c.get('session');
  const no = Number(c.req.param('no'));
  return session && Number.isSafeInteger(no) ? posts.find(no, session.member) : undefined;
};

/** Serves a post's picture and file. A member who may not see the post gets 404, as if it did not exist. */
export const postRoutes = (room: Room) =>
  new Hono<RoomEnv>()
    .get('/post/:no/chart.svg', async (c) => {
      const chart = requestedPost(room, c)?.reply.chart;
      if (!chart) return refuse(c, 'not-found');
      const look = c.req.query('theme') === 'dark' ? 'dark' : 'light';
      const svg = await room.ports.draw(chart, look, c.req.query('size') === 'small' ? 'small' : 'large');
      c.header('content-security-policy', inertCsp);
      c.header('cache-control', 'private, max-age=86400');
      return c.body(svg, 200, { 'content-type': 'image/svg+xml; charset=utf-8' });
    })
    .get('/post/:no/file', (c) => {
      const file = requestedPost(room, c)?.reply.file;
      if (!file) return refuse(c, 'not-found');
      c.header('content-security-policy', inertCsp);
      const name = file.name.replace(/[^\w.-]+/g, '_');
      c.header('content-disposition', `attachment; filename="${name}"`);
      const type = file.type === 'application/pdf' ? file.type : `${file.type}; charset=utf-8`;
      return c.body(file.content, 200, { 'content-type': type });
    });
