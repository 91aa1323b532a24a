import { Hono } from 'hono';
import { completeLine } from '../../desk/completeLine.ts';
import type { Session } from '../ports.ts';
import { isBody, readJson, textIn, type Body } from './readJson.ts';
import { refuse, type Room, type RoomEnv } from './room.ts';
import { sayLine, type Sent } from './sayLine.ts';
import { wired } from './startOf.ts';

const mostTyped = 5_000;

const readTyped = (body: Body): Record<string, string> | undefined => {
  const { typed } = body;
  if (!isBody(typed)) return undefined;
  const entries = Object.entries(typed);
  if (entries.length > 40) return undefined;
  const read: Record<string, string> = {};
  for (const [name, value] of entries) {
    if (typeof value !== 'string' || value.length > mostTyped || !/^[a-z][a-z0-9-]*$/.test(name))
      return undefined;
    read[name] = value;
  }
  return read;
};

const readPath = (body: Body): string[] | undefined => {
  const { path } = body;
  if (!Array.isArray(path) || path.length === 0 || path.length > 2) return undefined;
  const names = path.filter(
    (name): name is string => typeof name === 'string' && /^[a-z-]{1,40}$/.test(name),
  );
  return names.length === path.length ? names : undefined;
};

const readSent = (body: Body): Sent | undefined => {
  const id = textIn(body, 'id', 64);
  if (id === undefined || !/^[A-Za-z0-9_-]{16,64}$/.test(id)) return undefined;
  const { waited: given, sure } = body;
  // A browser's clock has fractions; instants have none.
  const waited = typeof given === 'number' && given > 0 ? Math.round(given) : 0;
  const about = { id, member: textIn(body, 'member', 64), waited, sure: sure === true };
  const line = textIn(body, 'line', mostTyped);
  if (line !== undefined) return { ...about, line };
  const path = readPath(body);
  const typed = readTyped(body);
  return path && typed ? { ...about, path, typed } : undefined;
};

const askerOf = async ({ ports }: Room, { member }: Session) => ({
  studio: ports.studio,
  member,
  role: (await ports.people.isKeeper(member)) ? ('keeper' as const) : ('member' as const),
  now: ports.clock.now(),
});

/** Saying a line, and having what is half typed completed. */
export const sayRoutes = (room: Room) =>
  new Hono<RoomEnv>()
    .post('/say', async (c) => {
      const session = c.get('session');
      if (!session) return refuse(c, 'sign-in');
      const body = await readJson(c);
      const sent = body && readSent(body);
      if (!sent) return refuse(c, 'bad-request');
      const said = await sayLine(room, session, sent);
      if ('refused' in said) return refuse(c, said.refused);
      if ('broken' in said) return c.json({ why: 'broken', said: said.broken }, 500);
      return c.json(await wired(room, said.post));
    })
    .post('/suggest', async (c) => {
      const session = c.get('session');
      if (!session) return refuse(c, 'sign-in');
      const body = await readJson(c);
      const path = body && readPath(body);
      const typed = body && readTyped(body);
      const option = body && textIn(body, 'option', 40);
      if (!path || !typed || option === undefined) return refuse(c, 'bad-request');
      const asked = { ...(await askerOf(room, session)), key: '', path, typed };
      return c.json(await room.ports.desk.suggest(asked, option));
    })
    .post('/complete', async (c) => {
      const session = c.get('session');
      if (!session) return refuse(c, 'sign-in');
      const body = await readJson(c);
      const line = body && textIn(body, 'line', mostTyped);
      if (line === undefined) return refuse(c, 'bad-request');
      const [choices, end] = await completeLine(line, await askerOf(room, session), room.ports.desk);
      return c.json({ choices: choices.slice(0, 25), end });
    });
