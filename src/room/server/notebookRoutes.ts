import { Hono } from 'hono';
import * as z from 'zod';
import { definedOnly } from '../../definedOnly.ts';
import type { NotebookSent } from '../ports.ts';
import { isTrue, optionalText, readJson } from './readJson.ts';
import { keepersOnly, refuse, type Room, type RoomEnv } from './room.ts';

const mostBytes = 512 * 1024;
const mostAnswers = 200;

const notebookBody = z
  .object({
    file: z
      .string()
      .max(Math.ceil(mostBytes / 3) * 4)
      .regex(/^[A-Za-z0-9+/]*={0,2}$/),
    columns: z
      .record(z.string(), z.string().max(60))
      .refine((all) => Object.keys(all).length <= mostAnswers)
      .default({}),
    dates: z.enum(['d/m/y', 'm/d/y']).optional().catch(undefined),
    decimal: z.enum([',', '.']).optional().catch(undefined),
    bucket: optionalText(10),
    newBuckets: optionalText(3),
    keep: isTrue,
  })
  .transform(({ file, keep, columns, newBuckets, ...said }): NotebookSent => ({
    bytes: Buffer.from(file, 'base64'),
    keep,
    said: {
      columns: new Map(Object.entries(columns)),
      newBuckets: newBuckets === 'yes',
      ...definedOnly(said),
    },
  }));
const undoBody = z.object({ no: z.int().positive() });

/** An old notebook, tried or brought in by a keeper, and taken back as one. */
export const notebookRoutes = (room: Room) => {
  const { notebook } = room.ports;
  return new Hono<RoomEnv>()
    .use(keepersOnly(room))
    .post('/', async (c) => {
      const { member } = c.get('session');
      const sent = await readJson(c, notebookBody);
      if (!sent) return refuse(c, 'bad-request');
      const answer = await notebook.read(sent, member, await room.names.of(member));
      if (answer.no !== undefined) room.buckets.forget();
      return c.json(answer);
    })
    .post('/undo', async (c) => {
      const sent = await readJson(c, undoBody);
      if (!sent) return refuse(c, 'bad-request');
      const answer = await notebook.takeBack(sent.no, c.get('session').member);
      room.buckets.forget();
      return c.json(answer);
    });
};
