import { describe, expect, it } from 'vitest';
import { FairShare } from '../../src/room/access/fairShare.ts';
import { openDatabase } from '../../src/store/engine/sqlite/database.ts';
import { dropExpired } from '../../src/store/lines/dropExpired.ts';
import { migrations } from '../../src/store/migrations/migrations.ts';
import { openStore } from '../../src/store/openStore.ts';
import { TransactionQueue } from '../../src/store/engine/sqlite/transactionQueue.ts';
import { days, instant, type MemberId } from '../../src/studio/ids.ts';
import { openGlazeRoom } from '../helpers/room/glazeRoom.ts';
import { phoneOf, testRoom, type Phone } from '../helpers/room/roomServer.ts';
import { settableClock, storeFile } from '../helpers/store/storeFile.ts';

describe('what is no prose', () => {
  it.each([
    ['/water-or-stir', 'bucket', 'gull-'.repeat(980)],
    ['/reading bucket:1', 'seconds', '1'.repeat(4_900)],
    ['/reading bucket:1', 'seen', 'lumps,'.repeat(700)],
    ['/stirred bucket:1', 'when', 'yesterday,'.repeat(490)],
    ['/undo', 'entry', '7-'.repeat(2_000)],
    ['/bucket show', 'bucket', 'é'.repeat(201)],
  ])('%s %s: ends at 200 characters, and says so', async (line, option, typed) => {
    const { keeper, say, bugs } = await openGlazeRoom();
    await keeper(0, '/bucket add name:"Gull Grey" pail:19l volume:15l gravity:1.42-1.46');
    const reply = await say(1, `${line} ${option}:"${typed}"`);
    expect(reply).toMatchObject({ ok: false, data: { option } });
    expect(reply.title).toContain(`That is ${typed.length} characters, and 200 is the most`);
    expect(bugs).toEqual([]);
  });

  it('is looked at up to there, and lists have room for more', async () => {
    const { keeper, say } = await openGlazeRoom();
    expect((await say(1, `/bucket show bucket:${'é'.repeat(200)}`)).title).toContain('There is no bucket');
    const days = Array.from({ length: 30 }, (_, i) => `2027-01-${String(i + 1).padStart(2, '0')}`).join(', ');
    expect(await keeper(1, `/studio hours closed:"${days}"`)).toMatchObject({ ok: true });
  });
});

describe('a member’s share of the room’s time', () => {
  /** A clock that moves only by pauses and by work. */
  const clock = () => {
    let now = 0;
    const paused: number[] = [];
    return {
      now: () => now,
      worked: () => now,
      pause: async (milliseconds: number) => {
        paused.push(milliseconds);
        now += milliseconds;
      },
      work: (milliseconds: number) => async () => void (now += milliseconds),
      pass: (milliseconds: number) => void (now += milliseconds),
      paused,
    };
  };

  it('is never felt by whoever says a line now and then', async () => {
    const time = clock();
    const shares = new FairShare(time);
    for (let i = 0; i < 100; i += 1) {
      expect(await shares.run('wren', time.work(12))).toMatchObject({ ok: true });
      time.pass(500);
    }
    expect(time.paused).toEqual([]);
  });

  it('runs out for whoever asks for much over and over, and not for anybody else', async () => {
    const time = clock();
    const shares = new FairShare(time);
    let worked = 0;
    for (let i = 0; i < 600; i += 1) {
      const before = time.now();
      const done = await shares.run('hog', time.work(100));
      if (done.ok) worked += 100;
      else expect(done.seconds).toBeGreaterThan(0);
      expect(await shares.run('wren', time.work(5))).toMatchObject({ ok: true });
      time.pass(Math.max(0, 100 - (time.now() - before)));
    }
    // A short share of the time, so that hardly anybody is affected.
    expect(worked / time.now()).toBeLessThan(0.03);
    time.pass(60_000);
    expect(await shares.run('hog', time.work(100))).toMatchObject({ ok: true });
  });

  it('is used by one request at a time, in order, and only so many wait', async () => {
    const shares = new FairShare();
    const order: number[] = [];
    let underWay = 0;
    const asked = Array.from({ length: 30 }, (_, i) =>
      shares.run('hog', async () => {
        underWay += 1;
        expect(underWay).toBe(1);
        await new Promise((resolve) => setImmediate(resolve));
        underWay -= 1;
        order.push(i);
      }),
    );
    const done = await Promise.all(asked);
    expect(done.filter(({ ok }) => ok)).toHaveLength(20);
    expect(order).toEqual([...order].sort((a, b) => a - b));
    await expect(shares.run('hog', () => Promise.reject(new Error('a planted bug')))).rejects.toThrow(
      'planted',
    );
    expect(await shares.run('hog', () => Promise.resolve('still there'))).toMatchObject({ ok: true });
  });
});

describe('what was said in the room', () => {
  const now = Date.UTC(2026, 2, 1, 12);
  const big = 'x'.repeat(1024 * 1024);

  const openPosts = async () => {
    const clock = settableClock();
    const file = storeFile();
    const store = await openStore(file, { clock });
    const studio = await store.people.studioOf('terminal', 'here', 'Elsewhere');
    const { posts } = store.room<string>(studio);
    const keep = (
      no: number,
      member: MemberId,
      more: { reply?: string; at?: number; private?: boolean; key?: string },
    ) =>
      posts.keep([
        {
          no,
          key: more.key ?? `room:${no}`,
          id: `id-${no}`,
          at: instant(more.at ?? now),
          member,
          line: '/bucket log',
          private: more.private ?? true,
          reply: more.reply ?? 'short',
        },
      ]);
    const member = (name: string) => store.people.memberOf(studio, 'terminal', name, name);
    return { clock, file, store, posts, keep, hog: await member('Hog'), wren: await member('Wren') };
  };

  it('takes at most 16 MiB of one member, the newest, and leaves what others said', async () => {
    const { posts, keep, store, hog, wren } = await openPosts();
    await keep(1, wren, {});
    for (let no = 2; no <= 40; no += 1) await keep(no, hog, { reply: big });
    const kept = await posts.latest(1_000);
    const theirs = kept.filter(({ member }) => member === hog);
    expect(theirs.reduce((sum, { reply }) => sum + reply.length, 0)).toBeLessThanOrEqual(16 * 1024 * 1024);
    expect(theirs.length).toBeGreaterThanOrEqual(15);
    expect(theirs.at(-1)?.no).toBe(40);
    expect(kept.filter(({ member }) => member === wren)).toHaveLength(1);
    await store.close();
  });

  it('goes by age while the program runs: what was private sooner, a reminder with the rest', async () => {
    const { keep, store, file, hog, wren } = await openPosts();
    const ago = (n: number) => now - days(n);
    await keep(1, wren, { at: ago(8), private: false });
    await keep(2, wren, { at: ago(6), private: false });
    await keep(3, wren, { at: ago(2) });
    await keep(4, wren, { at: ago(2), key: 'room:reminder:abc' });
    await keep(5, wren, { at: ago(0.5) });
    await keep(6, hog, { at: ago(9) });
    await store.close();
    const database = openDatabase(file, migrations.length);
    const turns = new TransactionQueue(database);
    while (await dropExpired(turns, instant(now)));
    // The last post stays, however old, because numbering continues from it.
    expect(database.sqlite.prepare('select no from room_posts order by no').pluck().all()).toEqual([
      2, 4, 5, 6,
    ]);
    await turns.close();
    database.sqlite.close();
  });
});

describe('one member’s phones', () => {
  it('are at most ten: the first of them is signed out', async () => {
    const open = await testRoom({ demo: true });
    const phones: Phone[] = [];
    for (let i = 0; i < 11; i += 1) phones.push(await phoneOf(open, 'Wren', { passcode: '', secret: '' }));
    const isIn = async (phone: Phone | undefined) =>
      (await phone?.get('/api/start'))?.json['me'] !== undefined;
    expect(await isIn(phones[0])).toBe(false);
    for (const phone of phones.slice(1)) expect(await isIn(phone)).toBe(true);
  });

  it('hold at most five streams, and one address twenty', async () => {
    const open = await testRoom({ demo: true });
    const statuses: number[] = [];
    const listen = async (phone: Phone) => {
      const message = await phone.open('GET', '/api/stream');
      statuses.push(message.statusCode ?? 0);
      message.on('error', () => undefined).resume();
    };
    const names = ['Wren', 'Tern', 'Knot', 'Ruff', 'Plover'];
    for (const name of names) {
      const phone = await phoneOf(open, name, { passcode: '', secret: '' });
      for (let i = 0; i < 6; i += 1) await listen(phone);
    }
    const opened = [200, 200, 200, 200, 200, 503];
    expect(statuses).toEqual([...opened, ...opened, ...opened, ...opened, 503, 503, 503, 503, 503, 503]);
  });

  it('may ask what a stream would be, and are not left hanging', async () => {
    const open = await testRoom({ demo: true });
    const phone = await phoneOf(open, 'Wren', { passcode: '', secret: '' });
    const message = await phone.open('HEAD', '/api/stream');
    expect(message.statusCode).toBe(200);
    expect(message.headers['content-type']).toContain('text/event-stream');
    message.resume();
    expect((await phone.say('/bucket list')).status).toBe(200);
  });
});
