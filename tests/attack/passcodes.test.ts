import { describe, expect, it } from 'vitest';
import { isLike, isWeak } from '../../src/room/access/weakSecret.ts';
import { Phone, phoneOf, testRoom } from '../helpers/room/roomServer.ts';
import { settableClock } from '../helpers/store/storeFile.ts';

describe('a word that others know', () => {
  it.each([
    ['THREEBLUEHERONS', 'three blue herons'],
    ['three-blue-herons1', 'three blue herons'],
    ['2345a-bcdef', '2345abcdef'],
  ])('%s is like %s', (secret, known) => {
    expect(isLike(secret, known)).toBe(true);
  });

  it('is not in what has nothing to do with it, nor in anything when there is none', () => {
    expect(isLike('oyster catcher', 'three blue herons')).toBe(false);
    expect(isLike('oyster catcher', '')).toBe(false);
  });

  it.each(['Wrackline Clay Co-op', 'wracklineclaycoop', 'Wrackline Clay Co-op 1'])(
    'the studio’s name is one: %s',
    (secret) => {
      expect(isWeak(secret, 'Odile', 'Wrackline Clay Co-op')).toBe(true);
    },
  );
});

describe('one’s own password', () => {
  it('is never the studio’s passcode, which would let everybody in as its owner', async () => {
    const open = await testRoom();
    const { passcode } = open;
    const bare = passcode.replace('-', '');
    const phone = new Phone(open.port);
    for (const secret of [passcode, passcode.toUpperCase(), bare]) {
      const { status, json } = await phone.signIn({ name: 'Zoe', secret, passcode });
      expect({ status, why: json['why'] }, secret).toEqual({ status: 400, why: 'passcode-secret' });
    }
    const named = await phone.signIn({ name: 'Zoe', secret: 'Wrackline Clay Co-op', passcode });
    expect(named.json).toMatchObject({ why: 'weak-secret' });
    expect((await phone.signIn({ name: 'Zoe', secret: 'oyster catcher', passcode })).status).toBe(200);
  });

  it('is not the passcode either for whoever never typed that, or claims a name anew', async () => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    await phoneOf(open, 'Zoe');
    await keeper.post('/api/door/release', { name: 'Zoe' });
    const { json } = await keeper.post('/api/door/invite', {});
    const [, code = ''] = /#join=([\w-]+)/.exec(String(json['url'])) ?? [];
    const zoe = new Phone(open.port);
    const secret = open.passcode.toUpperCase();
    expect((await zoe.signIn({ name: 'Zoe', secret, code })).json).toMatchObject({ why: 'passcode-secret' });
    // The code is not spent by that.
    expect((await zoe.signIn({ name: 'Zoe', secret: 'oyster catcher', code })).status).toBe(200);
  });

  it('becomes no passcode', async () => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    await phoneOf(open, 'Zoe', { secret: 'oyster catcher' });
    const set = (passcode: string) => keeper.post('/api/door/passcode', { passcode });
    for (const passcode of ['oyster catcher', ' oyster catcher ', 'Odile likes clay'])
      expect((await set(passcode)).json, passcode).toMatchObject({ why: 'members-secret' });
    expect((await set('three blue herons')).status).toBe(200);
  });

  it('that is too long is called too long, and so is a passcode', async () => {
    const open = await testRoom();
    const phone = new Phone(open.port);
    const secret = 'oyster catcher '.repeat(14);
    const { json } = await phone.signIn({ name: 'Zoe', secret, passcode: open.passcode });
    expect(json).toMatchObject({ why: 'long-secret', said: expect.stringContaining('at most 200') });
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const set = await keeper.post('/api/door/passcode', { passcode: secret });
    expect(set.json).toMatchObject({ why: 'long-passcode' });
  });
});

describe('a phone that has been here', () => {
  it('comes in while strangers from many addresses hold every other place', async () => {
    const open = await testRoom({ trustProxy: true, clock: settableClock() });
    const wren = await phoneOf(open, 'Wren');
    await wren.post('/api/sign-out', {});
    const guesses = Array.from({ length: 26 }, (_, n) =>
      new Phone(open.port).post(
        '/api/sign-in',
        {
          name: `Stranger ${'abcdefghijklmnopqrstuvwxyz'[n]}`,
          secret: 'oyster catcher',
          passcode: 'no such passcode',
        },
        { 'x-forwarded-for': `198.51.100.${n}` },
      ),
    );
    // When one of them has been turned away, every place is taken.
    expect((await Promise.race(guesses)).status).toBe(503);
    const back = { name: 'Wren', secret: 'Wren likes clay' };
    expect((await wren.signIn(back)).status).toBe(200);
    await Promise.all(guesses);
  }, 120_000);
});
