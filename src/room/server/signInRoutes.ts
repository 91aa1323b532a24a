import { Hono, type Context } from 'hono';
import { encode } from 'uqr';
import * as z from 'zod';
import { roomWords, type SignInRefusal } from '../../words/platform/roomWords.ts';
import { readRoomCookie, writeRoomCookie } from './cookies.ts';
import type { Listening } from './eventStream.ts';
import { shownUrl } from '../access/hosts.ts';
import { nameKey } from '../../text/normalizedName.ts';
import type { CodePurpose } from '../ports.ts';
import { isTrue, readJson } from './readJson.ts';
import { keepersOnly, refuse, signedIn, type Room, type RoomEnv } from './room.ts';
import { roundReply } from './roundReply.ts';
import { freshToken, tokenHash } from '../access/secrets.ts';
import { startOf, studioOf } from './startOf.ts';

const year = 366 * 24 * 3_600_000;
const day = 24 * 3_600_000;
/** As much as a body holds, so that whoever types too much is told so. */
const mostBody = 16 * 1024;

const text = (most: number) => z.string().max(most).catch('');
const signInBody = z.object({
  name: text(200),
  secret: text(mostBody),
  passcode: text(200),
  code: text(100),
  keeper: isTrue,
});
const signOutBody = z.object({ everywhere: z.literal(true) });
const invitationBody = z.object({ code: z.string().regex(/^[\w-]{43}$/), keeper: isTrue });
const passcodeBody = z.object({ passcode: z.string().max(mostBody), end: isTrue });
const releaseBody = z.object({ name: z.string().max(200) });

const refuseEntry = (c: Context, why: SignInRefusal) =>
  c.json({ why, said: roomWords.signIn[why] }, why === 'no-fit' ? 401 : 400);

export const makeCode = async ({ ports }: Pick<Room, 'ports'>, purpose: CodePurpose): Promise<string> => {
  const code = freshToken();
  // There is one first-keeper code and one board code: a new one replaces the old.
  if (purpose !== 'join') await ports.credentials.endCodes(purpose);
  const lasts = purpose === 'board' ? year : purpose === 'keeper' ? 7 * day : day;
  await ports.credentials.addCode(tokenHash(code), purpose, ports.clock.before(-lasts));
  return code;
};

export const signInRoutes = (room: Room, listening: Listening) =>
  new Hono<RoomEnv>()
    .post('/sign-in', async (c) => {
      const asked = await readJson(c, signInBody);
      if (!asked) return refuse(c, 'bad-request');
      const entered = await room.signIn.enter({
        ...asked,
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
      if (!room.ports.open) for (const stream of listening.keys()) stream.send('arrived', undefined, '{}');
      return c.json(await startOf(room, await room.sessions.of(token)));
    })
    .post('/sign-out', async (c) => {
      const session = c.get('session');
      const body = await readJson(c, signOutBody);
      if (session) await (body ? room.sessions.endAllOf(session.member) : room.sessions.end(session));
      writeRoomCookie(c, 'room', '', 0);
      return c.json({});
    })
    .get('/start', async (c) => c.json(await startOf(room, c.get('session'))))
    .get('/studio', signedIn, async (c) => c.json(await studioOf(room, c.get('session'))))
    .get('/round', signedIn, async (c) => c.json(await roundReply(room, c.get('session'))))
    /** Whether an invitation still holds, so that nobody fills a form in for one that was used. */
    .post('/invitation', async (c) => {
      const body = await readJson(c, invitationBody);
      if (!body) return refuse(c, 'bad-request');
      const purpose = body.keeper ? 'keeper' : 'join';
      return c.json({ holds: await room.ports.credentials.code(tokenHash(body.code), purpose, 'look') });
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
    .use(keepersOnly(room))
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
      const body = await readJson(c, passcodeBody);
      if (!body) return refuse(c, 'bad-request');
      const set = await room.passcode.set(body.passcode);
      if (!set.ok) return 'why' in set ? refuseEntry(c, set.why) : refuse(c, 'too-fast', set.seconds);
      if (body.end) {
        await ports.credentials.endCodes('join');
        await room.sessions.endAllBut(c.get('session'));
      }
      return c.json({});
    })
    .post('/release', async (c) => {
      const body = await readJson(c, releaseBody);
      if (!body) return refuse(c, 'bad-request');
      const session = c.get('session');
      const { name } = body;
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
