import { Hono } from 'hono';
import { encode } from 'uqr';
import { roomWords, type SignInRefusal } from '../../words/platform/roomWords.ts';
import { readRoomCookie, writeRoomCookie } from './cookies.ts';
import type { Listening } from './eventStream.ts';
import { shownUrl } from '../access/hosts.ts';
import { nameKey } from '../../text/normalizedName.ts';
import type { CodePurpose } from '../ports.ts';
import { readJson, textIn } from './readJson.ts';
import { refuse, type Room, type RoomContext, type RoomEnv } from './room.ts';
import { freshToken, tokenHash } from '../access/secrets.ts';
import { startOf, studioOf } from './startOf.ts';

const year = 366 * 24 * 3_600_000;
const day = 24 * 3_600_000;
/** As much as a body holds: what is too long is told so, and is not nothing. */
const mostBody = 16 * 1024;

const refuseEntry = (c: RoomContext, why: SignInRefusal) =>
  c.json({ why, said: roomWords.signIn[why] }, why === 'no-fit' ? 401 : 400);

/** Creates a code; only its hash is stored. */
export const makeCode = async ({ ports }: Pick<Room, 'ports'>, purpose: CodePurpose): Promise<string> => {
  const code = freshToken();
  // There is one first-keeper code and one board code: a new one replaces the old.
  if (purpose !== 'join') await ports.credentials.endCodes(purpose);
  const lasts = purpose === 'board' ? year : purpose === 'keeper' ? 7 * day : day;
  await ports.credentials.addCode(tokenHash(code), purpose, ports.clock.before(-lasts));
  return code;
};

export const signInRoutes = (room: Room, heard: Listening) =>
  new Hono<RoomEnv>()
    .post('/sign-in', async (c) => {
      const body = await readJson(c);
      if (!body) return refuse(c, 'bad-request');
      const text = (name: string, most: number) => textIn(body, name, most) ?? '';
      const entered = await room.signIn.enter({
        name: text('name', 200),
        secret: text('secret', mostBody),
        passcode: text('passcode', 200),
        code: text('code', 100),
        keeper: body['keeper'] === true,
        known: readRoomCookie(c, 'known', c.get('secure')),
        from: c.get('from'),
      });
      if (!entered.ok)
        return 'slow' in entered ? refuse(c, entered.slow, entered.seconds) : refuseEntry(c, entered.why);
      const { token, seconds, known } = entered;
      const before = c.get('session');
      if (before) await room.sessions.end(before);
      writeRoomCookie(c, 'room', token, seconds);
      writeRoomCookie(c, 'known', known, seconds * 4);
      await room.names.refresh();
      // A keeper's first steps end when a guest comes; the demo has none.
      if (!room.ports.open) for (const stream of heard.keys()) stream.send('arrived', undefined, '{}');
      return c.json(await startOf(room, await room.sessions.of(token)));
    })
    .post('/sign-out', async (c) => {
      const session = c.get('session');
      const body = await readJson(c);
      if (session)
        await (body?.['everywhere'] === true
          ? room.sessions.endAllOf(session.member)
          : room.sessions.end(session));
      writeRoomCookie(c, 'room', '', 0);
      return c.json({});
    })
    .get('/start', async (c) => c.json(await startOf(room, c.get('session'))))
    .get('/studio', async (c) => {
      const session = c.get('session');
      return session ? c.json(await studioOf(room, session)) : refuse(c, 'sign-in');
    })
    /** Whether an invitation still holds, so that nobody fills a form in for one that was used. */
    .post('/invitation', async (c) => {
      const body = await readJson(c);
      const code = body && textIn(body, 'code', 100);
      if (code === undefined || !/^[\w-]{43}$/.test(code)) return refuse(c, 'bad-request');
      const purpose = body?.['keeper'] === true ? 'keeper' : 'join';
      return c.json({ holds: await room.ports.credentials.code(tokenHash(code), purpose, 'look') });
    });

const withQrCode = (url: string) => {
  const { size, data } = encode(url, { ecc: 'M', border: 0 });
  return { url, size, dark: data.flat().map(Number).join('') };
};

/** What keepers do about access: invite phones, set the passcode, open a wall board, release a name. */
export const keeperRoutes = (room: Room) => {
  const { ports } = room;
  const url = () => shownUrl(room.address);
  return new Hono<RoomEnv>()
    .use(async (c, next) => {
      const session = c.get('session');
      if (!session) return refuse(c, 'sign-in');
      if (!(await ports.people.isKeeper(session.member))) return refuse(c, 'not-keeper');
      return next();
    })
    .get('/names', async (c) => {
      const claims = await ports.credentials.claims();
      const held = new Map(claims.map((claim) => [claim.key, claim]));
      const elsewhere = (await ports.people.all())
        .filter(({ name }) => !held.has(nameKey(name)))
        .map(({ name }) => ({ name, claimed: false, here: false }));
      return c.json([
        ...claims.map(({ name, secret }) => ({ name, claimed: secret !== undefined, here: true })),
        ...elsewhere,
      ]);
    })
    .post('/invite', async (c) => c.json(withQrCode(`${url()}/#join=${await makeCode(room, 'join')}`)))
    .post('/wall', async (c) => c.json(withQrCode(`${url()}/board#${await makeCode(room, 'board')}`)))
    .post('/passcode', async (c) => {
      const body = await readJson(c);
      const passcode = body && textIn(body, 'passcode', mostBody);
      if (passcode === undefined) return refuse(c, 'bad-request');
      const session = c.get('session');
      const set = await room.passcode.set(passcode);
      if (!set.ok) return 'why' in set ? refuseEntry(c, set.why) : refuse(c, 'too-fast', set.seconds);
      if (body?.['end'] === true && session) {
        await ports.credentials.endCodes('join');
        await room.sessions.endAllBut(session);
      }
      return c.json({});
    })
    .post('/release', async (c) => {
      const body = await readJson(c);
      const name = body && textIn(body, 'name', 200);
      const session = c.get('session');
      if (name === undefined || !session) return refuse(c, 'bad-request');
      const key = nameKey(name);
      const claim = await ports.credentials.claim(key);
      const namesakes = (await ports.people.all()).filter((one) => nameKey(one.name) === key);
      // On other platforms several members may have this name: none of them loses anything here.
      if (!claim && namesakes.length > 1) return refuseEntry(c, 'several');
      const member = claim?.member ?? namesakes[0]?.id;
      if (member === undefined) return refuse(c, 'not-found');
      if (member === session.member) return refuseEntry(c, 'yourself');
      // The next claimant of the name must not become a keeper by it.
      if (
        (await ports.people.isKeeper(member)) &&
        !(await ports.people.setKeeper(member, false, session.member))
      )
        return refuseEntry(c, 'last-keeper');
      await ports.credentials.release(key, member, claim?.name ?? name);
      await room.sessions.endAllOf(member);
      return c.json({});
    });
};
