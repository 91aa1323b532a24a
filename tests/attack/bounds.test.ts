import { linkSync, rmSync } from 'node:fs';
import { describe, expect, it, onTestFinished } from 'vitest';
import { sql } from 'kysely';
import { connectRoom } from '../../src/start/connectRoom.ts';
import { migrations } from '../../src/store/migrations/migrations.ts';
import { openDesk } from '../../src/desk/dispatch.ts';
import { speak } from '../../src/desk/speak.ts';
import { commands } from '../../src/start/registry.ts';
import { en } from '../../src/words/en.ts';
import { handbook } from '../helpers/handbook.ts';
import { noonPlus } from '../helpers/store/storeEvents.ts';
import { csvLine } from '../../src/replies/export/csvLine.ts';
import { cleanName } from '../../src/room/access/cleanName.ts';
import { openStore } from '../../src/store/openStore.ts';
import { instant, memberId, type Instant, type MemberId } from '../../src/studio/ids.ts';
import { openGlazeRoom } from '../helpers/room/glazeRoom.ts';
import { breakLog, gullGrey, Phone, phoneOf, sayAsKeeper, testRoom } from '../helpers/room/roomServer.ts';
import { openTestStore, settableClock, storeFile } from '../helpers/store/storeFile.ts';

const year = 366 * 24 * 3_600_000;

describe('a line that has waited', () => {
  // 8.64e15 ms is the last moment that a Date can hold (ECMA-262, 21.4.1.1).
  it.each([year + 1_000, 20 * year, 1_900 * year, 8.64e15, 1e300, '1e999'])(
    'for %s ms is refused, however sure its writer is',
    async (waited) => {
      const open = await testRoom();
      await sayAsKeeper(open, gullGrey);
      const wren = await phoneOf(open, 'Wren');
      const id = 'an-id-of-its-own-0123';
      const body = `{"id":"${id}","line":"/stirred bucket:gg","sure":true,"waited":${waited}}`;
      const got = await wren.post('/api/say', body);
      expect(got).toMatchObject({ status: 400, json: { why: 'over-a-year-old' } });
      expect(got.json['said']).toContain('more than a year ago');
      // Sent again by a phone whose clock is right, it is logged.
      expect((await wren.say('/stirred bucket:gg', id, { waited: year - 60_000, sure: true })).status).toBe(
        200,
      );
    },
  );
});

describe('what one member logs in a day', () => {
  it('is counted for each member and each day, also across a restart; what is refused is not counted', async () => {
    const clock = { now: () => noonPlus(0) };
    const first = await openTestStore({ clock });
    const studio = await first.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
    const [hog, wren] = [memberId('hog'), memberId('wren')];
    const at = (iso: string) => instant(Date.parse(iso));
    const now = at('2026-03-01T12:00:00Z');
    let keys = 0;
    const count = (store: typeof first, member: MemberId, when: Instant, keep = true) =>
      store.books.writeOnce(studio, `${(keys += 1)}`, async (book) => ({
        keep,
        value: await book.countToday(member, when),
      }));
    expect(await count(first, hog, now)).toBe(1);
    expect(await count(first, hog, now, false)).toBe(2);
    expect(await count(first, hog, now)).toBe(2);
    await first.close();
    const next = await openTestStore({ clock, file: first.file });
    expect(await count(next, hog, at('2026-03-01T23:59:00Z'))).toBe(3);
    expect(await count(next, wren, now)).toBe(1);
    expect(await count(next, hog, at('2026-03-02T00:00:00Z'))).toBe(1);
  });

  it('is said at the desk, and what is asked is answered all the same', async () => {
    const { store, studio, member, keeper } = await openGlazeRoom();
    await keeper(0, '/bucket add name:"Gull Grey" pail:19l volume:15l gravity:1.42-1.46');
    const desk = openDesk({ commands, books: store.books, words: en, handbook, report: String, mostADay: 3 });
    const say = async (key: string, minutes: number, line: string, as = 'Wren') =>
      speak(
        line,
        key,
        { studio, member: await member(as), role: 'member', now: noonPlus(minutes) },
        { desk, words: en },
      );
    const stirred = '/stirred bucket:1';
    for (const key of ['a', 'b', 'c']) expect(await say(key, 1, stirred)).toMatchObject({ kind: 'answer' });
    const refused = await say('d', 2, stirred);
    expect(refused).toMatchObject({ kind: 'refusal', private: true });
    expect(refused.title.join('')).toContain('You have logged 3 entries today');
    // A repeat is the same entry, and whoever asks logs nothing.
    expect(await say('c', 2, stirred)).toMatchObject({ kind: 'answer' });
    expect(await say('e', 2, '/bucket show bucket:1')).toMatchObject({ kind: 'answer' });
    expect(await say('f', 2, stirred, 'Tern')).toMatchObject({ kind: 'answer' });
    expect(await say('d', 24 * 60, stirred)).toMatchObject({ kind: 'answer' });
  });
});

describe('a table for a spreadsheet', () => {
  it('carries nothing that acts on a terminal or turns text round', () => {
    // ESC [2J clears a screen, U+009B is CSI alone, BEL rings (ECMA-48); U+202E turns what follows (UAX #9).
    const line = csvLine(['a\u001b[2Jb', 'c\u0007d', 'e\u009b2Jf', 'g\u202Eh', 'i\tj\r\nk']);
    expect(line).toBe('a [2Jb,c d,e 2Jf,g h,"i\tj\r\nk"\r\n');
  });

  it.each(['=1+1', '\u001b=1+1', '\u202E=1+1', '\t=1+1'])('carries no formula: %j', (typed) => {
    expect(csvLine([typed])).toMatch(/^"?'/);
  });
});

describe('an id as a name', () => {
  const uuid = 'f81d4fae-7dec-41d0-a765-00a0c91e6bf6';

  it.each([uuid, uuid.toUpperCase(), uuid.replaceAll('-', ''), uuid.replaceAll('-', ' ')])(
    'is none: %s',
    (typed) => {
      expect(cleanName(typed)).toBeUndefined();
    },
  );

  it('leads to its member alone, in a mention and without', async () => {
    const { keeper, store, studio, member } = await openGlazeRoom();
    const wren = await member('Wren');
    await member(wren);
    const keepers = async () => (await store.books.read(studio, (book) => book.studio())).keepers;
    expect(await keeper(1, `/studio keeper member:"<@${wren}>"`)).toMatchObject({ ok: true });
    expect(await keepers()).toEqual([wren]);
    // Somebody else's name looks like the id of nobody.
    await member(uuid);
    for (const typed of [`<@${uuid}>`, `<@!${uuid}>`, uuid, '<@Tove>'])
      expect(await keeper(2, `/studio keeper member:"${typed}"`), typed).toMatchObject({ ok: false });
    expect(await keepers()).toEqual([wren]);
  });
});

describe('a second name of the file', () => {
  it('opens it for nobody, while it is open and afterwards', async () => {
    const clock = settableClock();
    const file = storeFile();
    const store = await openStore(file, { clock });
    const other = `${file}.other`;
    linkSync(file, other);
    onTestFinished(() => rmSync(other, { force: true }));
    await expect(openStore(other, { clock })).rejects.toMatchObject({ kind: 'several-names' });
    await store.close();
    await expect(openStore(file, { clock })).rejects.toMatchObject({ kind: 'several-names' });
    rmSync(other);
    await (await openStore(file, { clock })).close();
  });
});

describe('trouble', () => {
  it('with a full disk is called so when a line is said, too', async () => {
    const clock = settableClock();
    const store = await openTestStore({
      migrations: [
        ...migrations,
        // So many pages, and no more: what SQLite says of a full disk it says of this.
        async (db) => void (await sql`pragma max_page_count = 90`.execute(db)),
      ],
    });
    const studio = await store.people.studioOf('terminal', 'here', 'Elsewhere');
    const desk = openDesk({ commands, books: store.books, words: en, handbook, report: () => 'a number' });
    const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
    const room = await connectRoom(
      { store, desk, words: en, handbook, clock, rooms: new Map() },
      { ROOM_BIND: '127.0.0.1', ROOM_PORT: 0, ROOM_TRUST_PROXY: 'off' },
      { studio, open: true, lan: false, newKeys: false, log: quiet, tell: () => undefined },
    );
    onTestFinished(() => room.stop().catch(() => undefined));
    const wren = new Phone(room.port);
    await wren.signIn({ name: 'Wren', keeper: true });
    expect((await wren.say(gullGrey)).status).toBe(200);
    let last = await wren.say('/help');
    for (let i = 0; i < 50 && last.status < 500; i += 1)
      last = await wren.say(`/stirred bucket:gg note:"${'x'.repeat(3_900)}"`);
    expect(last).toMatchObject({ status: 507, json: { why: 'disk-full' } });
  });

  it('that is a bug stays one', async () => {
    const open = await testRoom({ mayBreak: true });
    await sayAsKeeper(open, gullGrey);
    const wren = await phoneOf(open, 'Wren');
    breakLog(open);
    expect((await wren.say('/stirred bucket:gg')).status).toBe(500);
  });

  it.each(['PUT', 'DELETE', 'PATCH', 'OPTIONS'])('%s is no method here', async (method) => {
    const open = await testRoom();
    const answer = await new Phone(open.port).open(method, '/api/say');
    answer.resume();
    expect(answer.statusCode).toBe(405);
    expect(answer.headers.allow).toBe('GET, HEAD, POST');
  });
});

describe('the name of a bucket', () => {
  it('has nothing in it that hides, turns or acts', async () => {
    const { keeper } = await openGlazeRoom();
    await keeper(1, '/bucket add name:"Gull\u202E \u001b[2JGrey" nick:"g\u0007g"');
    const shown = await keeper(2, '/bucket show bucket:"Gull [2JGrey"');
    expect(shown.title + JSON.stringify(shown.facts)).toContain('Gull [2JGrey');
  });
});
