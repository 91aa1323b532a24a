import { connect, type Socket } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import { mostOfOneAddress } from '../../src/room/server/limitSockets.ts';
import { networkOf } from '../../src/room/access/networkOf.ts';
import { isWeak } from '../../src/room/access/weakSecret.ts';
import { Phone, phoneOf, testRoom } from '../helpers/room/roomServer.ts';
import { settableClock } from '../helpers/store/storeFile.ts';

describe('an address', () => {
  it.each([
    // RFC 4291, 2.2: one address in several spellings.
    ['2001:DB8:0:0:8:800:200C:417A', '2001:db8:0:0'],
    ['2001:db8::8:800:200c:417a', '2001:db8:0:0'],
    ['2001:0db8:0000:0000:ffff::1', '2001:db8:0:0'],
    ['2001:db8:0:1::1', '2001:db8:0:1'],
    ['::1', '0:0:0:0'],
    ['fe80::1%eth0', 'fe80:0:0:0'],
    ['[2001:db8::1]:443', '2001:db8:0:0'],
    ['[2001:db8::1]', '2001:db8:0:0'],
    ['::ffff:192.0.2.7', '192.0.2.7'],
    ['::ffff:c000:207', '192.0.2.7'],
    ['192.0.2.7:51234', '192.0.2.7'],
    [' 192.0.2.7 ', '192.0.2.7'],
    ['unknown', undefined],
    ['192.0.2.700', undefined],
    ['', undefined],
  ])('%j is of the network %s', (typed, network) => {
    expect(networkOf(typed)).toBe(network);
  });
});

describe('a password', () => {
  it.each([
    ...['password', 'Password123', 'P@ssw0rd', '12345678', '20240315', 'aaaaaaaa', 'abababab', 'qwertyuiop'],
    ...[
      '1234qwer',
      'Odile2024',
      'odileodile',
      'odile-odile',
      'mypassword',
      'letmein!!',
      'pottery1',
      'glazeroom',
    ],
  ])('%s is too weak for Odile', (secret) => {
    expect(isWeak(secret, 'Odile')).toBe(true);
  });

  it.each([
    'oyster catcher',
    'Odile likes clay',
    'three blue heron',
    'x9$%^&*(',
    '8150263947512',
    'grünspecht',
  ])('%s is not', (secret) => {
    expect(isWeak(secret, 'Odile')).toBe(false);
  });

  it('that is weak is refused where one is chosen, and spends no code', async () => {
    const open = await testRoom();
    const phone = new Phone(open.port);
    const weak = { name: 'Odile', secret: 'odile1234', code: open.keeperCode };
    expect((await phone.signIn(weak)).json).toMatchObject({ why: 'weak-secret' });
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const set = await keeper.post('/api/door/passcode', { passcode: 'password' });
    expect(set.json).toMatchObject({ why: 'weak-passcode' });
  });
});

describe('guessing', () => {
  it('is written down without what was guessed, and is slow for one name from however many addresses', async () => {
    const open = await testRoom({ trustProxy: true, clock: settableClock() });
    await phoneOf(open, 'Wren');
    const people = await open.app.store.books.read(open.studio, (book) => book.members());
    const member = people.find(({ name }) => name === 'Wren')?.id;
    expect(member).toBeDefined();
    const guess = (n: number, name: string) =>
      new Phone(open.port).post(
        '/api/sign-in',
        { name, secret: `guess number ${n}`, passcode: `pass of ${n}` },
        { 'x-forwarded-for': `198.51.100.${n}` },
      );
    const statuses: number[] = [];
    for (let n = 1; n <= 11; n += 1) statuses.push((await guess(n, 'Wren')).status);
    expect(statuses.filter((status) => status === 401).length).toBeLessThanOrEqual(10);
    expect(statuses.at(-1)).toBe(429);
    // Others can still sign in, and no password is in the log.
    expect((await guess(12, 'Hunter2 swordfish')).status).toBe(401);
    expect(open.warned).toContainEqual(expect.objectContaining({ from: '198.51.100.1', member }));
    expect(open.warned).toContainEqual(expect.objectContaining({ from: '198.51.100.12', member: undefined }));
    expect(JSON.stringify(open.warned)).not.toMatch(/guess number|pass of|swordfish|Wren/);
  });
});

describe('connections', () => {
  it('of one address are so many at most, and leave room for another', async () => {
    const open = await testRoom();
    const sockets: Socket[] = [];
    onTestFinished(() => sockets.forEach((socket) => void socket.destroy()));
    let cut = 0;
    const over = 20;
    const hold = () =>
      new Promise<void>((resolve) => {
        const socket = connect({ port: open.port, host: '127.0.0.1', localAddress: '127.0.0.1' });
        sockets.push(socket);
        socket.on('error', () => undefined);
        socket.once('connect', resolve);
        socket.once('close', () => (cut += 1));
      });
    for (let i = 0; i < mostOfOneAddress + over; i += 1) await hold();
    while (cut < over) await new Promise((resolve) => setTimeout(resolve, 10));
    const status = await new Promise<string>((resolve, reject) => {
      const other = connect({ port: open.port, host: '127.0.0.1', localAddress: '127.0.0.2' });
      sockets.push(other);
      other.on('error', reject);
      other.once('data', (data) => resolve(data.toString().slice(0, 12)));
      other.write(`GET /api/start HTTP/1.1\r\nhost: 127.0.0.1:${open.port}\r\n\r\n`);
    });
    expect(status).toBe('HTTP/1.1 200');
    expect(cut).toBe(over);
  });
});

describe('a new passcode', () => {
  it('ends sessions and invitations when the keeper wants that, but their own session', async () => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const wren = await phoneOf(open, 'Wren');
    const { json } = await keeper.post('/api/door/invite', {});
    const [, code = ''] = /#join=([\w-]+)/.exec(String(json['url'])) ?? [];
    const change = (end: boolean) =>
      keeper.post('/api/door/passcode', { passcode: 'three blue herons', end });
    const isIn = async (phone: Phone) => (await phone.get('/api/start')).json['me'] !== undefined;
    await change(false);
    expect(await isIn(wren)).toBe(true);
    const heard = await wren.listen();
    const ended = new Promise((resolve) => heard.message.once('close', resolve));
    heard.message.resume();
    await change(true);
    await ended;
    expect(await isIn(wren)).toBe(false);
    expect(await isIn(keeper)).toBe(true);
    const late = await new Phone(open.port).signIn({ name: 'Tern', secret: 'oyster catcher', code });
    expect(late.json).toMatchObject({ why: 'code-used' });
  });
});
