import { Hono } from 'hono';
import type { NotebookSent } from '../ports.ts';
import { isBody, readJson, textIn, type Body } from './readJson.ts';
import { refuse, type Room, type RoomEnv } from './room.ts';

const mostBytes = 512 * 1024;
const mostAnswers = 200;

const columnsIn = ({ columns = {} }: Body): ReadonlyMap<string, string> | undefined => {
  if (!isBody(columns)) return undefined;
  const pairs = Object.entries(columns).filter(
    (pair): pair is [string, string] => typeof pair[1] === 'string' && pair[1].length <= 60,
  );
  const all = pairs.length === Object.keys(columns).length && pairs.length <= mostAnswers;
  return all ? new Map(pairs) : undefined;
};

/** Bytes in base64, without anything that is none. */
const bytesIn = (body: Body): Uint8Array | undefined => {
  const text = textIn(body, 'file', Math.ceil(mostBytes / 3) * 4);
  return text !== undefined && /^[A-Za-z0-9+/]*={0,2}$/.test(text) ? Buffer.from(text, 'base64') : undefined;
};

const readSent = (body: Body): NotebookSent | undefined => {
  const [bytes, columns] = [bytesIn(body), columnsIn(body)];
  if (!bytes || !columns) return undefined;
  const { dates, decimal } = body;
  const bucket = textIn(body, 'bucket', 10);
  return {
    bytes,
    keep: body['keep'] === true,
    said: {
      columns,
      newBuckets: body['newBuckets'] === 'yes',
      ...(bucket !== undefined && { bucket }),
      ...((dates === 'd/m/y' || dates === 'm/d/y') && { dates }),
      ...((decimal === ',' || decimal === '.') && { decimal }),
    },
  };
};

/** An old notebook, tried or brought in by a keeper, and taken back as one. */
export const notebookRoutes = (room: Room) => {
  const { notebook, people } = room.ports;
  return new Hono<RoomEnv>()
    .use(async (c, next) => {
      const session = c.get('session');
      if (!session) return refuse(c, 'sign-in');
      if (!(await people.isKeeper(session.member))) return refuse(c, 'not-keeper');
      return next();
    })
    .post('/', async (c) => {
      const session = c.get('session');
      const body = await readJson(c);
      const sent = body && readSent(body);
      if (!session || !sent) return refuse(c, 'bad-request');
      const answer = await notebook.read(sent, session.member, await room.names.of(session.member));
      if (answer.no !== undefined) room.buckets.forget();
      return c.json(answer);
    })
    .post('/undo', async (c) => {
      const session = c.get('session');
      const no = (await readJson(c))?.['no'];
      if (!session || typeof no !== 'number' || !Number.isSafeInteger(no) || no < 1)
        return refuse(c, 'bad-request');
      const answer = await notebook.takeBack(no, session.member);
      room.buckets.forget();
      return c.json(answer);
    });
};
