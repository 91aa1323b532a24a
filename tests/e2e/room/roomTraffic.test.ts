import { connect } from 'node:net';
import { describe, expect, it } from 'vitest';
import { systemClock } from '../../../src/clock.ts';
import {
  breakLog,
  gullGrey,
  Phone,
  type Got,
  phoneOf,
  sayAsKeeper,
  testRoom,
  type TestRoom,
} from '../../helpers/room/roomServer.ts';
import { settableClock } from '../../helpers/store/storeFile.ts';

const hour = 3_600_000;
const day = 24 * hour;

const id = (n: number | string) => `line-${n}-`.padEnd(24, '0');

const entriesOf = async ({ app, studio }: TestRoom) => {
  const [bucket] = await app.store.books.read(studio, (book) => book.buckets());
  if (!bucket) throw new Error('no bucket');
  return app.store.books.read(studio, (book) => book.entries(bucket.no, { most: 1_000 }));
};

/** Sends raw bytes, as a broken or hostile client would; returns the first line of the response. */
const raw = (port: number, bytes: string): Promise<string> =>
  new Promise((resolve) => {
    let text = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
    socket.on('data', (chunk) => {
      text += chunk.toString();
      socket.end();
    });
    socket.on('error', () => undefined);
    socket.on('close', () => resolve(text.split('\r\n')[0] ?? ''));
  });

describe('what the room refuses', () => {
  it('names that are not its own, whatever address they lead to', async () => {
    const open = await testRoom();
    const phone = new Phone(open.port);
    for (const host of [
      'evil.example',
      `evil.example:${open.port}`,
      `127.0.0.1.evil.example:${open.port}`,
      '127.0.0.1',
    ]) {
      phone.host = host;
      expect((await phone.get('/')).status, host).toBe(421);
      phone.origin = `http://${host}`;
      expect((await phone.signIn({})).status, host).toBe(421);
    }
    expect(await raw(open.port, 'GET / HTTP/1.1\r\nhost:\r\n\r\n')).toMatch(/ 4\d\d /);
    phone.host = `LOCALHOST:${open.port}`;
    expect((await phone.get('/')).status).toBe(200);
  });

  it('writes that come from another site, or that do not say where from', async () => {
    const open = await testRoom();
    await sayAsKeeper(open, gullGrey);
    const wren = await phoneOf(open, 'Wren');
    for (const origin of [
      undefined,
      'null',
      'https://evil.example',
      `https://127.0.0.1:${open.port}`,
      `http://127.0.0.1:${open.port + 1}`,
    ]) {
      wren.origin = origin;
      expect((await wren.say('/stirred bucket:gg')).status, String(origin)).toBe(403);
    }
    expect(await entriesOf(open)).toHaveLength(1);
  });

  it('bodies that are too large, of another kind, or not what they say', async () => {
    const open = await testRoom();
    const wren = await phoneOf(open, 'Wren');
    expect((await wren.post('/api/say', { id: id(1), line: 'x'.repeat(20_000) })).status).toBe(413);
    expect(
      (
        await wren.post(
          '/api/say',
          { id: id(1), line: 'x'.repeat(20_000) },
          { 'transfer-encoding': 'chunked' },
        )
      ).status,
    ).toBe(413);
    for (const type of [
      'text/plain',
      'application/x-www-form-urlencoded',
      'multipart/form-data',
      'application/jsonp',
      '',
    ])
      expect(
        (await wren.post('/api/say', { id: id(1), line: '/help' }, { 'content-type': type })).status,
        type,
      ).toBe(415);
    const bad: unknown[] = [
      '',
      '{',
      '[]',
      'null',
      '"x"',
      { line: '/help' },
      { id: 'short', line: '/help' },
      { id: id(1) },
      { id: id(1), path: ['../x'], typed: {} },
      { id: id(1), path: ['reading'], typed: { bucket: 7 } },
      { id: id(1), path: ['reading'], typed: { __proto__x: 'y', 'A-B': 'c' } },
      { id: `${id(1)}\n`, line: '/help' },
    ];
    for (const body of bad)
      expect((await wren.post('/api/say', body)).status, JSON.stringify(body)).toBe(400);
  });

  it('paths that lead out of the page, or nowhere', async () => {
    const open = await testRoom();
    const phone = new Phone(open.port);
    for (const path of [
      '/page/x/../../package.json',
      '/page/x/..%2f..%2fpackage.json',
      '/page/x/%2e%2e/%2e%2e/package.json',
      '/page//etc/passwd',
      '/page/x/main.js%00.css',
      '/page/x/main.ts',
      '/page/x/constructor',
      '/page/x/__proto__',
      '/.env',
      '/data/studio.db',
      '/api',
      '/api/',
      '/api/post/1e0/chart.svg',
      '/api/post/-1/file',
      '/%ff',
      '/%',
    ])
      expect([400, 404], path).toContain((await phone.get(path)).status);
    for (const method of ['PUT', 'DELETE', 'PATCH', 'TRACE'])
      expect((await phone.open(method, '/api/say')).statusCode, method).not.toBe(200);
    for (const bytes of [
      'GET / HTTP/1.1\r\n\r\n',
      'GET http://evil.example/ HTTP/1.1\r\nhost: evil.example\r\n\r\n',
      `GET /${'a'.repeat(20_000)} HTTP/1.1\r\n`,
      '\0\0\0\r\n\r\n',
    ])
      expect(await raw(open.port, bytes)).not.toMatch(/ 200 /);
  });

  it('more than a phone can mean, while phones that are signed in are answered', async () => {
    const open = await testRoom();
    const wren = await phoneOf(open, 'Wren');
    const crowd = new Phone(open.port);
    const floods: Got[] = [];
    let answered = 0;
    for (let round = 0; round < 20; round += 1) {
      const flood = Array.from({ length: 100 }, () => crowd.get('/api/start'));
      if ((await wren.say('/help')).status === 200) answered += 1;
      floods.push(...(await Promise.all(flood)));
    }
    expect(answered).toBe(20);
    const refused = floods.filter(({ status }) => status !== 200);
    expect(refused.length).toBeGreaterThan(1_000);
    for (const { status, headers } of refused) {
      expect(status).toBe(429);
      expect(Number(headers['retry-after'])).toBeGreaterThan(0);
    }
  });

  it('takes a proxy’s word on who asks only when it is set to', async () => {
    const clock = settableClock();
    const trusting = await testRoom({ trustProxy: true, clock });
    const direct = await testRoom({ clock });
    const tries = async (open: TestRoom) => {
      const phone = new Phone(open.port);
      let last = 0;
      for (let i = 0; i < 330; i += 1)
        last = (await phone.get('/api/start', { 'x-forwarded-for': `10.0.0.1, 198.51.100.${i % 250}` }))
          .status;
      return last;
    };
    expect(await tries(trusting)).toBe(200);
    expect(await tries(direct)).toBe(429);
  });
});

describe('what is said in the room', () => {
  it('is logged once, however often and however much at once it is sent', async () => {
    const open = await testRoom();
    await sayAsKeeper(open, gullGrey);
    const wren = await phoneOf(open, 'Wren');
    const ears = await wren.listen();
    const sent = await Promise.all(
      Array.from({ length: 8 }, () => wren.say('/stirred bucket:gg', id('once'))),
    );
    const late = await wren.say('/stirred bucket:gg', id('once'));
    expect(new Set([...sent, late].map(({ json }) => json['no'])).size).toBe(1);
    expect(await entriesOf(open)).toHaveLength(2);
    await wren.say('/help', id('after'));
    await ears.until(2);
    expect(ears.posts.map((post) => post['id'])).toEqual([id('once'), id('after')]);
    ears.message.destroy();
  });

  it.each([
    ['as a browser counts', 600_000.4, 600_000],
    ['of a moment', 5_000.9, 5_001],
    ['too short to count', 4_999.5, 0],
    ['before it was written', -600_000, 0],
    ['of no number', '600000', 0],
  ])('is of when it was written, and logged when it came: a wait %s', async (_, waited, ago) => {
    const clock = settableClock();
    const open = await testRoom({ clock });
    await sayAsKeeper(open, gullGrey);
    const wren = await phoneOf(open, 'Wren');
    const now = clock.now();
    expect((await wren.say('/stirred bucket:gg', id('late'), { waited })).status).toBe(200);
    const [entry] = await entriesOf(open);
    expect(entry).toMatchObject({ event: { kind: 'stir' }, at: now - ago, loggedAt: now });
  });

  it('is not logged a day later until whoever wrote it says so, and then as of then', async () => {
    const clock = settableClock();
    const open = await testRoom({ clock });
    await sayAsKeeper(open, gullGrey);
    const wren = await phoneOf(open, 'Wren');
    const now = clock.now();
    const old = { waited: 3 * day + 0.5 };
    const asked = await wren.say('/stirred bucket:gg', id('old'), old);
    expect([asked.status, asked.json['why']]).toEqual([409, 'too-old']);
    expect(await entriesOf(open)).toHaveLength(1);
    await wren.say('/stirred bucket:gg', id('old'), { ...old, sure: true });
    expect((await entriesOf(open))[0]).toMatchObject({ at: now - 3 * day - 1, loggedAt: now });
  });

  it('moves no clock but that of its entry: a code that has ended stays ended, an undo too late is too late', async () => {
    const clock = settableClock();
    const open = await testRoom({ clock });
    await sayAsKeeper(open, gullGrey);
    const wren = await phoneOf(open, 'Wren');
    const { json: mine } = await wren.say('/stirred bucket:gg');
    const member = await open.app.store.people.memberOf(open.studio, 'discord', '81', 'Dunlin');
    const offer = { studio: open.studio, member, role: 'member', now: clock.now(), typed: {} } as const;
    const offered = await open.app.desk.dispatch({ ...offer, key: 'discord:1', path: ['link'] });
    const line = `/link code:${String(offered.data['code'])}`;
    const entry = (await entriesOf(open))[0];
    clock.set(clock.now() + 19 * hour);
    const waited = { waited: 19 * hour };
    expect((await wren.say(line, id('code'), waited)).json).toMatchObject({ reply: { kind: 'refusal' } });
    expect((await wren.say(`/undo entry:${entry?.id ?? ''}`, id('undo'), waited)).json).toMatchObject({
      reply: { kind: 'refusal' },
    });
    expect(mine['reply']).toMatchObject({ kind: 'answer' });
  });

  it('gives nobody more guesses at a code by telling each another time', async () => {
    const open = await testRoom();
    const wren = await phoneOf(open, 'Wren');
    const titles: string[] = [];
    for (let n = 0; n < 8; n += 1) {
      const { json } = await wren.say(`/link code:2222-222${n + 2}`, id(n), { waited: (8 - n) * hour });
      titles.push(/"title":\[[^\]]*\]/.exec(JSON.stringify(json))?.[0] ?? '');
    }
    expect(new Set(titles.slice(0, 5)).size).toBe(1);
    expect(new Set(titles.slice(5)).size).toBe(1);
    expect(titles[5]).not.toBe(titles[0]);
  });

  it('is not said under the name of somebody else who signed in since; of one who was linked, it is', async () => {
    const open = await testRoom();
    await sayAsKeeper(open, gullGrey);
    const [wren, tern] = [await phoneOf(open, 'Wren'), await phoneOf(open, 'Tern')];
    const who = async (phone: Phone) =>
      ((await phone.get('/api/start')).json['me'] as { member: string }).member;
    const [wrens, terns] = [await who(wren), await who(tern)];
    const stir = (n: number, member: string) => ({ id: id(n), line: '/stirred bucket:gg', member });
    expect((await tern.post('/api/say', stir(1, wrens))).status).toBe(401);
    expect(await entriesOf(open)).toHaveLength(1);
    expect((await tern.post('/api/say', stir(2, terns))).status).toBe(200);
    const member = await open.app.store.people.memberOf(open.studio, 'discord', '81', 'Dunlin');
    const offer = { studio: open.studio, member, role: 'member', now: open.app.clock.now() } as const;
    const { data } = await open.app.desk.dispatch({ ...offer, typed: {}, key: 'discord:1', path: ['link'] });
    expect((await wren.say(`/link code:${String(data['code'])}`)).status).toBe(200);
    expect((await wren.post('/api/say', stir(3, wrens))).status).toBe(200);
    expect(await entriesOf(open)).toHaveLength(3);
  });

  it('is tried again when a bug kept it from being logged, and logged once', async () => {
    const open = await testRoom({ mayBreak: true });
    await sayAsKeeper(open, gullGrey);
    const wren = await phoneOf(open, 'Wren');
    const mend = breakLog(open);
    for (const _ of ['once', 'again']) {
      const broken = await wren.say('/stirred bucket:gg', id('bug'));
      expect([broken.status, broken.json['why']]).toEqual([500, 'broken']);
      expect(broken.json['said']).toMatch(/nothing was saved.* [0-9a-f]{8}\.$/);
    }
    mend();
    const { json: mended } = await wren.say('/stirred bucket:gg', id('bug'));
    expect(mended).toMatchObject({ reply: { kind: 'answer' } });
    expect((await wren.say('/stirred bucket:gg', id('bug'))).json['no']).toBe(mended['no']);
    expect(await entriesOf(open)).toHaveLength(2);
  });

  it('reaches the others when it is public, and nobody else when it is private: live, replayed, or asked for', async () => {
    const open = await testRoom();
    await sayAsKeeper(open, gullGrey);
    await sayAsKeeper(open, '/reading bucket:gg gravity:1.44 stirred:yes');
    const [wren, tern] = [await phoneOf(open, 'Wren'), await phoneOf(open, 'Tern')];
    const ears = await tern.listen();
    const { json: card } = await wren.say('/bucket show bucket:gg');
    expect(card).toMatchObject({ private: true, reply: { chart: expect.stringContaining('Gull Grey') } });
    const { json: refused } = await wren.say('/reading bucket:gg gravity:9');
    expect(refused).toMatchObject({ private: true });
    const { json: stirred } = await wren.say('/stirred bucket:gg');
    await ears.until(1);
    expect(ears.posts.map((post) => post['no'])).toEqual([stirred['no']]);
    const replay = await tern.listen(0);
    await replay.until(1);
    expect(replay.posts.map((post) => post['no'])).toEqual([stirred['no']]);
    const start = await tern.get('/api/start');
    expect(start.text).not.toContain('/bucket show');
    const picture = `/api/post/${String(card['no'])}/chart.svg`;
    expect((await tern.get(picture)).status).toBe(404);
    const own = await wren.get(`${picture}?theme=dark`);
    expect(own.text).toMatch(/^<svg /);
    expect(own.headers['content-security-policy']).toContain("default-src 'none'");
    for (const { message } of [ears, replay]) message.destroy();
  });

  it('is there again after a restart, and numbers go on', async () => {
    const open = await testRoom();
    await sayAsKeeper(open, gullGrey);
    const wren = await phoneOf(open, 'Wren');
    const { json: first } = await wren.say('/stirred bucket:gg', id('before'));
    const next = await open.again();
    const phone = new Phone(next.port);
    phone.setCookie('room', wren.cookie('room') ?? '');
    expect((await phone.get('/api/start')).json).toMatchObject({ posts: [{ no: first['no'] }] });
    expect((await phone.say('/stirred bucket:gg', id('before'))).json['no']).toBe(first['no']);
    expect(Number((await phone.say('/stirred bucket:gg')).json['no'])).toBeGreaterThan(Number(first['no']));
    await next.room.stop();
    await next.app.store.close();
  }, 60_000);

  it('is heard there too when it was logged elsewhere, and reminders are their member’s alone', async () => {
    const open = await testRoom();
    await sayAsKeeper(open, gullGrey);
    const [wren, tern] = [await phoneOf(open, 'Wren'), await phoneOf(open, 'Tern')];
    const [hears, other] = [await wren.listen(), await tern.listen()];
    const member = await open.app.store.people.memberOf(open.studio, 'discord', '81', 'Dunlin');
    const elsewhere = open.room.postingDesk(open.app.desk);
    const about = { studio: open.studio, member, role: 'member', now: systemClock.now() } as const;
    await elsewhere.dispatch({ ...about, key: 'discord:1', path: ['stirred'], typed: { bucket: 'gg' } });
    await elsewhere.dispatch({ ...about, key: 'discord:2', path: ['help'], typed: {} });
    const claim = (await open.app.store.room(open.studio).door.claims()).find(({ name }) => name === 'Wren');
    if (!claim) throw new Error('Wren has no name');
    const reminder = { kind: 'answer', title: ['Your coat is dry.'], data: {} } as const;
    expect(
      await open.room.voice.speak(
        open.studio,
        claim.member,
        { ...reminder, title: [...reminder.title] },
        'n1',
      ),
    ).toBe('said');
    expect(
      await open.room.voice.speak(open.studio, member, { ...reminder, title: [...reminder.title] }, 'n2'),
    ).toBe('not-mine');
    await hears.until(2);
    expect(hears.posts).toMatchObject([
      { name: 'Dunlin', private: false },
      { private: true, line: '' },
    ]);
    expect(other.posts).toHaveLength(1);
    for (const { message } of [hears, other]) message.destroy();
  });

  it('reaches two hundred phones, and is not held up by one that takes nothing', async () => {
    const open = await testRoom({ demo: true, trustProxy: true });
    const wren = await phoneOf(open, 'Wren');
    const letters = [...'abcdefghijklmnopqrst'].flatMap((letter) => [`${letter}a`, `${letter}e`]);
    const phones = await Promise.all(letters.map((letter) => phoneOf(open, `Listener ${letter}`)));
    phones.forEach((phone, i) => (phone.from = `198.51.100.${i}`));
    const ears = await Promise.all(
      phones.flatMap((phone) => Array.from({ length: 5 }, () => phone.listen())),
    );
    expect(ears).toHaveLength(200);
    for (const one of phones) expect((await one.get('/api/stream')).status).toBe(503);
    ears[0]?.message.destroy();
    const stalled = await wren.open('GET', '/api/stream');
    stalled?.pause();
    stalled?.on('error', () => undefined);
    for (let i = 0; i < 30; i += 1) expect((await wren.say('/stirred bucket:gg')).status).toBe(200);
    const heard = ears.slice(1);
    await Promise.all(heard.map((one) => one.until(30)));
    for (const { posts } of heard) {
      const numbers = posts.map((post) => Number(post['no']));
      expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    }
    for (const { message } of ears) message.destroy();
    stalled?.destroy();
  }, 60_000);
});
