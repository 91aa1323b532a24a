import { describe, expect, it } from 'vitest';
import { gullGrey, Phone, phoneOf, sayAsKeeper, testRoom } from '../../helpers/room/roomServer.ts';

const secret = 'oyster catcher';

describe('the way into the room', () => {
  it('asks for sign-in on loopback too, and tells nothing of the studio before', async () => {
    const open = await testRoom();
    await sayAsKeeper(open, gullGrey);
    const phone = new Phone(open.port);
    expect((await phone.get('/api/start')).json).toMatchObject({ open: false, commands: [], posts: [] });
    expect((await phone.get('/')).text).not.toContain('Gull Grey');
    for (const path of ['/api/stream', '/api/board', '/api/door/names'])
      expect((await phone.get(path)).status, path).toBe(401);
    for (const path of ['/api/say', '/api/suggest', '/api/complete', '/api/door/invite', '/api/door/wall'])
      expect((await phone.post(path, {})).status, path).toBe(401);
    expect((await phone.get('/api/post/1/chart.svg')).status).toBe(404);
  });

  it('lets in by the passcode, and by nothing that is not', async () => {
    const open = await testRoom();
    const phone = new Phone(open.port);
    for (const passcode of ['', 'wrong', `${open.passcode} `.repeat(3), '\0', "' or 1=1 --"])
      expect((await phone.signIn({ name: 'Wren', secret, passcode })).status, passcode).toBe(401);
    expect((await phone.signIn({ name: 'Wren', secret, passcode: open.passcode })).status).toBe(200);
    expect((await phone.get('/api/start')).json).toMatchObject({ me: { name: 'Wren', keeper: false } });
  });

  it('never gives one member’s name to another, however it is written', async () => {
    const open = await testRoom();
    await phoneOf(open, 'Wren', { secret });
    const other = new Phone(open.port);
    for (const name of ['Wren', 'wren', ' W r e n ', 'Wrén', 'WREN.', 'Ｗｒｅｎ', 'Wren\u200b'])
      expect([400, 401], name).toContain(
        (await other.signIn({ name, secret: 'another word', passcode: open.passcode })).status,
      );
    // Contains Cyrillic letters.
    expect(
      (await other.signIn({ name: 'Wrеn', secret: 'another word', passcode: open.passcode })).json,
    ).toMatchObject({
      why: 'bad-name',
    });
  });

  it('gives a name to one of two who claim it at the same moment', async () => {
    const open = await testRoom();
    const both = await Promise.all(
      ['first word', 'second word'].map((own) =>
        new Phone(open.port).signIn({ name: 'Tern', secret: own, passcode: open.passcode }),
      ),
    );
    expect(both.map(({ status }) => status).sort()).toEqual([200, 401]);
  });

  it('holds back a name that is somebody’s on another platform, until a keeper releases it', async () => {
    const open = await testRoom();
    await sayAsKeeper(open, gullGrey);
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const taken = await new Phone(open.port).signIn({ name: 'Warden', secret, passcode: open.passcode });
    expect(taken.json).toMatchObject({ why: 'name-taken' });
    expect((await keeper.post('/api/door/release', { name: 'Warden' })).status).toBe(200);
    const warden = await phoneOf(open, 'Warden', { secret });
    expect((await warden.get('/api/start')).json).toMatchObject({ me: { name: 'Warden', keeper: false } });
  });

  it('ends a released member’s sessions and their keeping, at once', async () => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const wren = await phoneOf(open, 'Wren', { secret });
    expect((await keeper.say('/studio keeper member:Wren')).json).toMatchObject({
      reply: { kind: 'answer' },
    });
    expect((await wren.get('/api/door/names')).status).toBe(200);
    const { message } = await wren.listen();
    const cut = new Promise((resolve) => message.once('close', resolve));
    await keeper.post('/api/door/release', { name: 'wren' });
    expect((await wren.get('/api/door/names')).status).toBe(401);
    await cut;
    const next = await phoneOf(open, 'Wren', { secret: 'a new word of mine' });
    expect((await next.get('/api/start')).json).toMatchObject({ me: { keeper: false } });
    expect((await keeper.post('/api/door/release', { name: 'Odile' })).json).toMatchObject({
      why: 'yourself',
    });
  });

  it('makes the first keeper by a code that works once', async () => {
    const open = await testRoom();
    const odile = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    expect((await odile.get('/api/start')).json).toMatchObject({ me: { keeper: true } });
    const second = await new Phone(open.port).signIn({ name: 'Skua', secret, code: open.keeperCode });
    expect(second.json).toMatchObject({ why: 'code-used' });
  });

  it('lets one phone in by each invitation', async () => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const { json } = await keeper.post('/api/door/invite', {});
    const code = /#join=([\w-]{43})$/.exec(String(json['url']))?.[1];
    const all = await Promise.all(
      ['Plover', 'Dunlin', 'Knot'].map((name) => new Phone(open.port).signIn({ name, secret, code })),
    );
    expect(all.filter(({ status }) => status === 200)).toHaveLength(1);
  });

  it('keeps members from the keepers’ side of the door', async () => {
    const open = await testRoom();
    const wren = await phoneOf(open, 'Wren', { secret });
    for (const path of ['invite', 'wall', 'passcode', 'release'])
      expect(
        (await wren.post(`/api/door/${path}`, { passcode: 'mine mine mine', name: 'Odile' })).status,
        path,
      ).toBe(403);
    expect((await wren.say('/bucket add name:"Sly Grey"')).json).toMatchObject({
      reply: { kind: 'refusal' },
    });
  });

  it('takes a new passcode from a keeper, and no longer the old one', async () => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    expect((await keeper.post('/api/door/passcode', { passcode: 'short' })).status).toBe(400);
    expect((await keeper.post('/api/door/passcode', { passcode: 'wedge and wheel' })).status).toBe(200);
    expect(
      (await new Phone(open.port).signIn({ name: 'Wren', secret, passcode: open.passcode })).status,
    ).toBe(401);
    await phoneOf(open, 'Wren', { secret, passcode: 'wedge and wheel' });
  });

  it('is opened by its operator when passcode and keepers are lost, and by nothing that was handed out before', async () => {
    const open = await testRoom();
    const { passcode, keeperCode } = open;
    await phoneOf(open, 'Odile', { code: keeperCode, passcode: '' });
    await phoneOf(open, 'Wren', { secret, passcode });
    const unused = await open.room.invitation('keeper');
    const next = await open.again({ newKeys: true });
    const enter = (asked: Record<string, unknown>) => new Phone(next.port).signIn({ secret, ...asked });
    expect((await enter({ name: 'Tern', passcode })).status).toBe(401);
    expect((await enter({ name: 'Tern', code: unused.split('=')[1] })).status).toBe(400);
    expect((await enter({ name: 'Wren', passcode: next.passcode })).status).toBe(200);
    const keeper = await phoneOf(next, 'Isolde', { code: next.keeperCode, passcode: '' });
    expect((await keeper.post('/api/door/release', { name: 'Odile' })).status).toBe(200);
    expect((await enter({ name: 'Knot', code: next.keeperCode })).status).toBe(400);
    await next.room.stop();
    await next.app.store.close();
  });

  it('knows a member again by name and password, whatever passcode there is by now', async () => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    await phoneOf(open, 'Wren', { secret, passcode: open.passcode.toUpperCase().replace('-', ' ') });
    await keeper.post('/api/door/passcode', { passcode: 'wedge and wheel' });
    const enter = (asked: Record<string, unknown>) => new Phone(open.port).signIn(asked);
    expect((await enter({ name: 'Wren', secret })).status).toBe(200);
    expect((await enter({ name: 'Wren', secret: 'not the word' })).json).toMatchObject({ why: 'no-fit' });
    expect((await enter({ name: 'Tern', secret })).json).toMatchObject({ why: 'no-fit' });
    await keeper.post('/api/door/release', { name: 'Wren' });
    expect((await enter({ name: 'Wren', secret })).json).toMatchObject({ why: 'no-fit' });
  });

  it('opens the demo alone without a password', async () => {
    const open = await testRoom({ demo: true });
    const phone = await phoneOf(open, 'Wren', { secret: '', passcode: '', keeper: true });
    expect((await phone.get('/api/start')).json).toMatchObject({ open: true, me: { keeper: true } });
  });
});

describe('sessions', () => {
  it('hold after a restart, and end when they are signed out of', async () => {
    const open = await testRoom();
    const wren = await phoneOf(open, 'Wren', { secret });
    const token = wren.cookie('room') ?? '';
    const next = await open.again();
    const phone = new Phone(next.port);
    phone.setCookie('room', token);
    expect((await phone.get('/api/start')).json).toMatchObject({ me: { name: 'Wren' } });
    expect((await phone.post('/api/sign-out', { everywhere: true })).status).toBe(200);
    phone.setCookie('room', token);
    expect((await phone.get('/api/start')).json['me']).toBeUndefined();
    await next.room.stop();
    await next.app.store.close();
  }, 60_000);

  it('take no forged, cut, foreign or doubled cookie', async () => {
    const open = await testRoom();
    const wren = await phoneOf(open, 'Wren', { secret });
    const token = wren.cookie('room') ?? '';
    const forged = new Phone(open.port);
    for (const value of [
      '',
      'x',
      token.slice(1),
      `${token}A`,
      token.toLowerCase(),
      'A'.repeat(43),
      '%00',
      `${token}%20`,
    ]) {
      forged.setCookie('room', value);
      expect((await forged.post('/api/say', {})).status, value).toBe(401);
    }
    // The https cookie name is not accepted over http, nor the other way round.
    forged.forget('room');
    forged.setCookie('__Host-room', token);
    expect((await forged.post('/api/say', {})).status).toBe(401);
  });

  it('use the names and marks that browsers hold to, over http and over https', async () => {
    const open = await testRoom({ url: 'https://glaze.wrackline.example' });
    const plain = new Phone(open.port);
    const given = { name: 'Wren', secret, passcode: open.passcode };
    const [http] = (await plain.signIn(given)).headers['set-cookie'] ?? [];
    expect(http).toMatch(/^room=[\w-]{43}; Max-Age=\d+; Path=\/; HttpOnly; SameSite=Lax$/);
    const secure = new Phone(open.port);
    secure.host = 'glaze.wrackline.example';
    secure.origin = 'https://glaze.wrackline.example';
    const [https] = (await secure.signIn(given)).headers['set-cookie'] ?? [];
    expect(https).toMatch(/^__Host-room=[\w-]{43}; Max-Age=\d+; Path=\/; HttpOnly; Secure; SameSite=Lax$/);
    // Under the https name, the request must also come from the https origin.
    secure.origin = 'http://glaze.wrackline.example';
    expect((await secure.post('/api/say', {})).status).toBe(403);
  });
});

describe('guessing', () => {
  it('is slowed by address, while a phone that was here before still gets in', async () => {
    const open = await testRoom();
    const wren = await phoneOf(open, 'Wren', { secret });
    await wren.post('/api/sign-out', {});
    const thief = new Phone(open.port);
    const statuses: number[] = [];
    for (let i = 0; i < 14; i += 1)
      statuses.push(
        (await thief.signIn({ name: 'Wren', secret: `guess ${i} guess`, passcode: open.passcode })).status,
      );
    expect(statuses.filter((status) => status === 401).length).toBeLessThanOrEqual(10);
    const slowed = await thief.signIn({ name: 'Wren', secret, passcode: open.passcode });
    expect(slowed.status).toBe(429);
    expect(Number(slowed.headers['retry-after'])).toBeGreaterThan(0);
    expect((await wren.signIn({ name: 'Wren', secret, passcode: open.passcode })).status).toBe(200);
  });
});

describe('the wall', () => {
  it('is headed by the name that a keeper gave the studio', async () => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const named = async () => (await keeper.get('/api/board')).json['studio'];
    expect(await named()).toBe('Wrackline Clay Co-op');
    await sayAsKeeper(open, '/studio set name:"Crab Apple Yard"');
    await expect.poll(named).toBe('Crab Apple Yard');
    expect((await keeper.get('/api/start')).json).toMatchObject({ studio: 'Crab Apple Yard' });
  });

  it('shows by a token that can only look, until another is made', async () => {
    const open = await testRoom();
    await sayAsKeeper(open, gullGrey);
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const make = async () => {
      const { json } = await keeper.post('/api/door/wall', {});
      return { authorization: `Bearer ${/#([\w-]{43})$/.exec(String(json['url']))?.[1] ?? ''}` };
    };
    const old = await make();
    const wall = new Phone(open.port);
    expect((await wall.get('/api/board', old)).json).toMatchObject({
      buckets: [{ name: 'Gull Grey', step: 'stir' }],
    });
    expect((await wall.get('/api/stream', old)).status).toBe(401);
    expect((await wall.post('/api/say', { id: 'x'.repeat(20), line: '/help' }, old)).status).toBe(401);
    const fresh = await make();
    expect((await wall.get('/api/board', old)).status).toBe(401);
    expect((await wall.get('/api/board', fresh)).status).toBe(200);
  });
});
