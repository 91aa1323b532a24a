import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { openApp } from '../../../src/start/app.ts';
import { systemClock } from '../../../src/clock.ts';
import type { Request } from '../../../src/contract/desk.ts';
import { connectRoom } from '../../../src/start/connectRoom.ts';
import { Phone, phoneOf, testRoom, type TestRoom } from '../../helpers/room/roomServer.ts';

/** A member of another platform logs something that is also posted in the room. */
const logsElsewhere = async ({ app, room, studio }: TestRoom, name: string) => {
  const member = await app.store.people.memberOf(studio, 'terminal', name, name);
  const request: Request = {
    key: `terminal:${name}`,
    studio,
    member,
    role: 'keeper',
    now: app.clock.now(),
    path: ['studio', 'firing'],
    typed: { when: 'tomorrow 9am' },
  };
  const reply = await room.postingDesk(app.desk).dispatch(request);
  expect(reply.kind).toBe('answer');
};

it.each([
  ['', false],
  [', and cannot be written down,', true],
])(
  'one failed read%s while a phone listens harms nobody: it comes back and hears what it missed',
  async (_, brokenLog) => {
    const open = await testRoom({ mayBreak: true, brokenLog });
    const phone = await phoneOf(open, 'Wren', { keeper: true, code: open.keeperCode });
    const heard = await phone.listen();
    const strays: unknown[] = [];
    const stray = (error: unknown) => void strays.push(error);
    process.on('unhandledRejection', stray);
    const { books } = open.app.store;
    const read = books.read.bind(books);
    const closed = new Promise((resolve) => heard.message.once('close', resolve));
    await logsElsewhere(open, 'Mara');
    await heard.until(1);
    // A member's first post needs a lookup of their name.
    books.read = () => Promise.reject(new Error('a planted fault of the disk'));
    await logsElsewhere(open, 'Ilse');
    await closed;
    books.read = read;
    const again = await phone.listen(Number(heard.posts.at(-1)?.['no']));
    await again.until(1);
    expect(again.posts[0]).toMatchObject({ name: 'Ilse' });
    process.off('unhandledRejection', stray);
    expect(strays).toEqual([]);
  },
);

it('a start that fails shows no passcode for good: the next shows the one that holds', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'room-'));
  const app = await openApp({ file: join(folder, 'studio.db'), clock: systemClock, onBug: () => undefined });
  onTestFinished(async () => {
    await app.store.close();
    rmSync(folder, { recursive: true });
  });
  const studio = await app.store.people.studioOf('terminal', 'here', 'Tidepool Studio');
  const told: string[] = [];
  let deaf = false;
  const tell = (text: string) => {
    if (deaf) throw new Error('nobody reads');
    told.push(text);
  };
  const log = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const start = () =>
    connectRoom(
      app,
      { ROOM_BIND: '127.0.0.1', ROOM_PORT: 0, ROOM_TRUST_PROXY: 'off' },
      { studio, open: false, lan: false, newKeys: false, log, tell },
    );
  const shown = () => /joining: (\S+)/.exec(told.join('\n'))?.[1] ?? '';
  const { kept } = app.store;
  const set = kept.set.bind(kept);
  kept.set = (name, value) =>
    name.startsWith('room-passcode') ? Promise.reject(new Error('the disk is full')) : set(name, value);
  await expect(start()).rejects.toThrow('the disk is full');
  kept.set = set;
  deaf = true;
  await expect(start()).rejects.toThrow('nobody reads');
  deaf = false;
  told.length = 0;
  const room = await start();
  const joins = await new Phone(room.port).signIn({
    name: 'Wren',
    secret: 'Wren likes clay',
    passcode: shown(),
  });
  expect(joins.status).toBe(200);
  await room.stop();
});

it('times are shown in the zone in which they are read', async () => {
  const open = await testRoom({ demo: true });
  const phone = await phoneOf(open, 'Wren');
  const start = await phone.get('/api/start');
  expect(start.json['zone']).toBe('America/St_Johns');
});
