import { Hono } from 'hono';
import type { ReplyFile } from '../../contract/contract.ts';
import { unseal } from '../posts/sealed.ts';
import type { Post } from '../ports.ts';
import { refuse, type Room, type RoomContext, type RoomEnv } from './room.ts';

/** A content security policy under which nothing in a picture or a file can run or load anything. */
const inertCsp = "default-src 'none'; style-src 'unsafe-inline'; sandbox";

/** For a sheet that the page shows in a frame, to print it: the page reaches it, and still nothing in it can run. */
const sheetCsp =
  "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'self'; sandbox allow-same-origin allow-modals";

const requestedPost = async ({ posts }: Room, c: RoomContext): Promise<Post | undefined> => {
  const session = c.get('session');
  const no = Number(c.req.param('no'));
  if (!session || !Number.isSafeInteger(no)) return undefined;
  if (no > posts.recent.last()) await posts.caughtUp();
  return posts.recent.find(no, session.member);
};

/** The file of a post that another process has made. */
const unsealed = async (
  { ports }: Room,
  post: Post | undefined,
  key: string | undefined,
): Promise<ReplyFile | undefined> => {
  const sealed = post && key && (await ports.postStore.sealed(post.no));
  const text = sealed && key && unseal(sealed, key);
  // Only a reply's file is sealed.
  return text ? (JSON.parse(text) as ReplyFile) : undefined;
};

/** Serves a post's picture and file. A member who may not see the post gets 404, as if it did not exist. */
export const postRoutes = (room: Room) =>
  new Hono<RoomEnv>()
    .get('/post/:no/chart.svg', async (c) => {
      const chart = (await requestedPost(room, c))?.reply.chart;
      if (!chart) return refuse(c, 'not-found');
      const look = c.req.query('theme') === 'dark' ? 'dark' : 'light';
      const size = c.req.query('size') === 'small' ? 'small' : 'large';
      const svg = await room.ports.draw(chart, look, size);
      c.header('content-security-policy', inertCsp);
      c.header('cache-control', 'private, max-age=86400');
      return c.body(svg, 200, { 'content-type': 'image/svg+xml; charset=utf-8' });
    })
    .get('/post/:no/file', async (c) => {
      const post = await requestedPost(room, c);
      const file = post?.reply.file ?? (await unsealed(room, post, c.req.query('key')));
      if (!file) return refuse(c, 'not-found');
      const isShown = c.req.query('show') !== undefined && file.type === 'text/html';
      c.header('content-security-policy', isShown ? sheetCsp : inertCsp);
      const name = file.name.replace(/[^\w.-]+/g, '_');
      c.header('content-disposition', `${isShown ? 'inline' : 'attachment'}; filename="${name}"`);
      const type = file.type === 'application/pdf' ? file.type : `${file.type}; charset=utf-8`;
      return c.body(file.content, 200, { 'content-type': type });
    });
