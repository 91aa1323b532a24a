import { Hono } from 'hono';
import * as z from 'zod';
import { completeLine } from '../../desk/completeLine.ts';
import type { Session } from '../ports.ts';
import { isTrue, optionalText, readJson } from './readJson.ts';
import { refuse, signedIn, type Room, type RoomEnv } from './room.ts';
import { sayLine } from './sayLine.ts';
import { postForPhone } from './startOf.ts';

const mostTyped = 5_000;

const path = z
  .array(z.string().regex(/^[a-z-]{1,40}$/))
  .min(1)
  .max(2);
const typed = z
  .record(z.string().regex(/^[a-z][a-z0-9-]*$/), z.string().max(mostTyped))
  .refine((all) => Object.keys(all).length <= 40);
const line = z.string().max(mostTyped);

const aboutLine = {
  id: z.string().regex(/^[A-Za-z0-9_-]{16,64}$/),
  member: optionalText(64),
  // Browsers send fractions of milliseconds; instants are whole. Infinity stays: that is too long.
  waited: z
    .unknown()
    .optional()
    .transform((given) => (typeof given === 'number' && given > 0 ? Math.round(given) : 0)),
  sure: isTrue,
};
const sayBody = z.union([
  z.object({ ...aboutLine, line, pressed: z.int().optional().catch(undefined) }),
  z.object({ ...aboutLine, path, typed }),
]);
const suggestBody = z.object({ path, typed, option: z.string().max(40) });
const completeBody = z.object({ line });

const askerOf = async ({ ports }: Room, { member }: Session) => ({
  studio: ports.studio,
  member,
  role: (await ports.people.isKeeper(member)) ? ('keeper' as const) : ('member' as const),
  now: ports.clock.now(),
});

export const sayRoutes = (room: Room) =>
  new Hono<RoomEnv>()
    .post('/say', signedIn, async (c) => {
      const sent = await readJson(c, sayBody);
      if (!sent) return refuse(c, 'bad-request');
      const said = await sayLine(room, c.get('session'), sent);
      if ('refused' in said) return refuse(c, said.refused);
      if ('broken' in said) return c.json({ why: 'broken', said: said.broken }, 500);
      return c.json(await postForPhone(room, said.post));
    })
    .post('/suggest', signedIn, async (c) => {
      const sent = await readJson(c, suggestBody);
      if (!sent) return refuse(c, 'bad-request');
      const { option, ...asked } = sent;
      const asker = await askerOf(room, c.get('session'));
      return c.json(await room.ports.desk.suggest({ ...asker, key: '', ...asked }, option));
    })
    .post('/complete', signedIn, async (c) => {
      const sent = await readJson(c, completeBody);
      if (!sent) return refuse(c, 'bad-request');
      const asker = await askerOf(room, c.get('session'));
      const [choices, end] = await completeLine(sent.line, asker, room.ports.desk);
      return c.json({ choices: choices.slice(0, 25), end });
    });
