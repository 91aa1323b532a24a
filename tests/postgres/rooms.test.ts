import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import { z } from 'zod';
import { systemClock } from '../../src/clock.ts';
import { speak } from '../../src/desk/speak.ts';
import { openApp } from '../../src/start/app.ts';
import { postElsewhere } from '../../src/start/postElsewhere.ts';
import type { MemberId } from '../../src/studio/ids.ts';
import { en } from '../../src/words/en.ts';
import { noonPlus } from '../helpers/store/storeEvents.ts';
import { openTestStore } from '../helpers/store/storeFile.ts';
import { newDatabase, queryAt } from '../helpers/postgres/databases.ts';
import {
  gullGrey,
  Phone,
  phoneOf,
  sayAsKeeper,
  testRoom,
  type TestRoom,
} from '../helpers/room/roomServer.ts';

/** One studio's room on a database, served by two processes. */
const twoRooms = async () => {
  const file = await newDatabase('empty_logbook');
  const one = await testRoom({ file });
  const other = { ...(await testRoom({ file })), passcode: one.passcode };
  return { file, one, other };
};

/** The same phone, as a balancer may send it to the other process. */
const samePhone = (phone: Phone, { port }: TestRoom): Phone => {
  const moved = new Phone(port);
  for (const name of ['room', 'known']) {
    const value = phone.cookie(name);
    if (value !== undefined) moved.setCookie(name, value);
  }
  return moved;
};

const numbersOf = (posts: readonly Record<string, unknown>[]) => posts.map(({ no }) => Number(no));
const linesOf = (posts: readonly Record<string, unknown>[]) => posts.map(({ line }) => line);
const upTo = (first: number, many: number) => Array.from({ length: many }, (_, i) => first + i);

/** Says a line, and waits when the phone has used up its share of a busy machine. */
const sayInTime = async (phone: Phone, line: string): Promise<void> => {
  for (;;) {
    const { status, headers } = await phone.say(line);
    if (status === 200) return;
    expect(status).toBe(429);
    await pause(1_000 * Number(headers['retry-after'] ?? 1));
  }
};

/** Ends the connections by which processes hear of each other, and keeps them from coming back. */
const deafen = async (file: string): Promise<void> => {
  await queryAt(
    file,
    `select pg_terminate_backend(pid) from pg_stat_activity
      where datname = current_database() and query like 'listen%'`,
  );
};

describe('a room that two processes serve', () => {
  it('numbers the posts of both in one sequence, and tells every phone all of them in that order', async () => {
    const { one, other } = await twoRooms();
    await sayAsKeeper(one, gullGrey);
    const [ilse, mara] = [await phoneOf(one, 'Ilse'), await phoneOf(other, 'Mara')];
    const ears = [await ilse.listen(), await mara.listen()] as const;
    const each = 15;
    await Promise.all(
      upTo(0, each).flatMap((i) => [
        sayInTime(ilse, `/stirred bucket:1 minutes:${i + 1}`),
        sayInTime(mara, `/added bucket:1 what:water amount:${i + 1}ml`),
      ]),
    );
    await Promise.all(ears.map(({ until }) => until(2 * each)));
    expect(numbersOf(ears[0].posts)).toEqual(upTo(1, 2 * each));
    expect(ears[1].posts.map(({ id }) => id)).toEqual(ears[0].posts.map(({ id }) => id));
    expect(new Set(ears[0].posts.map(({ id }) => id)).size).toBe(2 * each);
  });

  it('lets a phone go on at the other process from the last post that it was told', async () => {
    const { one, other } = await twoRooms();
    await sayAsKeeper(one, gullGrey);
    const ilse = await phoneOf(one, 'Ilse');
    const ears = await ilse.listen();
    for (const minutes of [1, 2, 3]) await ilse.say(`/stirred bucket:1 minutes:${minutes}`);
    await ears.until(3);
    ears.message.destroy();
    const moved = samePhone(ilse, other);
    expect((await moved.get('/api/start')).json['me']).toMatchObject({ name: 'Ilse' });
    for (const minutes of [4, 5]) await moved.say(`/stirred bucket:1 minutes:${minutes}`);
    const message = await moved.open('GET', '/api/stream', { 'last-event-id': '2' });
    let text = '';
    message.setEncoding('utf8').on('data', (chunk: string) => (text += chunk));
    await expect
      .poll(() => [...text.matchAll(/^id: (\d+)$/gm)].map(([, no]) => Number(no)))
      .toEqual([3, 4, 5]);
    message.destroy();
  });

  it('finds what the other has posted although no notification comes, and hears again afterwards', async () => {
    const { file, one, other } = await twoRooms();
    await sayAsKeeper(one, gullGrey);
    const [ilse, mara] = [await phoneOf(one, 'Ilse'), await phoneOf(other, 'Mara')];
    const ears = await mara.listen();
    let deaf = true;
    const deafening = (async () => {
      while (deaf) {
        await deafen(file);
        await pause(20);
      }
    })();
    await ilse.say('/stirred bucket:1 minutes:1');
    await ears.until(1);
    deaf = false;
    await deafening;
    await expect
      .poll(
        async () =>
          (
            await queryAt(
              file,
              "select 1 from pg_stat_activity where query like 'listen%' and datname = current_database()",
            )
          ).length,
      )
      .toBe(2);
    await ilse.say('/stirred bucket:1 minutes:2');
    await ears.until(2);
    expect(numbersOf(ears.posts)).toEqual([1, 2]);
  });

  it('posts a line once that is sent to both, and logs it once', async () => {
    const { one, other } = await twoRooms();
    await sayAsKeeper(one, gullGrey);
    const here = await phoneOf(one, 'Ilse');
    const there = samePhone(here, other);
    const ears = await here.listen();
    const id = 'the-same-line-0123456789';
    const answers = await Promise.all(
      [here, there, here, there].map((phone) => phone.say('/stirred bucket:1 minutes:1', id)),
    );
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200, 200]);
    expect(new Set(answers.map(({ json }) => json['no'])).size).toBe(1);
    await here.say('/stirred bucket:1 minutes:2');
    await ears.until(2);
    expect(linesOf(ears.posts)).toEqual(['/stirred bucket:1 minutes:1', '/stirred bucket:1 minutes:2']);
  });

  it('keeps a member’s private answers from everybody else, at the other process too', async () => {
    const { one, other } = await twoRooms();
    await sayAsKeeper(one, gullGrey);
    const [ilse, mara] = [await phoneOf(one, 'Ilse'), await phoneOf(other, 'Mara')];
    const ears = await mara.listen();
    const answer = await ilse.say('/water-or-stir bucket:1');
    expect(answer.json['private']).toBe(true);
    await ilse.say('/stirred bucket:1 minutes:1');
    await ears.until(1);
    expect(linesOf(ears.posts)).toEqual(['/stirred bucket:1 minutes:1']);
    expect((await mara.get(`/api/post/${Number(answer.json['no'])}/file`)).status).toBe(404);
    expect((await samePhone(ilse, other).get('/api/start')).text).toContain('/water-or-stir');
  });

  it('gives a phone the file of its answer at either process, for a while, and nobody who lacks its key', async () => {
    const { file, one, other } = await twoRooms();
    const odile = await phoneOf(one, 'Odile', { code: other.keeperCode, passcode: '' });
    await odile.say(gullGrey);
    const mara = await phoneOf(other, 'Mara');
    const answer = await odile.say('/export');
    const { fileKey } = z.object({ fileKey: z.string() }).parse(answer.json['reply']);
    const path = `/api/post/${Number(answer.json['no'])}/file`;
    const here = await odile.get(path);
    expect(here.text).toContain('Gull Grey');
    const there = samePhone(odile, other);
    const got = await there.get(`${path}?key=${fileKey}`);
    expect([got.status, got.text]).toEqual([200, here.text]);
    expect(got.headers['content-disposition']).toBe(here.headers['content-disposition']);
    for (const [phone, key] of [
      [there, ''],
      [there, `?key=${'A'.repeat(43)}`],
      [there, '?key=x'],
      [mara, `?key=${fileKey}`],
    ] as const)
      expect((await phone.get(`${path}${key}`)).status).toBe(404);
    const [kept] = await queryAt(file, 'select sealed from shown_once');
    expect(Buffer.from(String(kept?.['sealed']), 'base64').toString('latin1')).not.toContain('Gull Grey');
    await queryAt(file, 'update shown_once set until = 0');
    expect((await there.get(`${path}?key=${fileKey}`)).status).toBe(404);
  });

  it('shows at the other process at once what was changed here: names, states, and who is forgotten', async () => {
    const { one, other } = await twoRooms();
    await sayAsKeeper(one, gullGrey);
    const [ilse, mara] = [await phoneOf(one, 'Ilse'), await phoneOf(other, 'Mara')];
    await ilse.say('/reading bucket:1 gravity:1.45 note:"Ilse was here"');
    expect((await mara.get('/api/start')).text).toContain('Ilse was here');
    await sayAsKeeper(one, '/bucket change bucket:1 name:"Kelp Rope"');
    expect((await mara.get('/api/board')).text).toContain('Kelp Rope');
    const moved = samePhone(ilse, other);
    expect((await moved.get('/api/studio')).status).toBe(200);
    const ears = await moved.listen();
    const ended = new Promise<void>((resolve) => ears.message.once('close', resolve));
    await ilse.say('/forget-me sure:yes');
    expect((await moved.get('/api/studio')).status).toBe(401);
    await ended;
    await one.app.store.erased();
    await expect.poll(async () => (await mara.get('/api/start')).text).not.toContain('Ilse was here');
  });
});

describe('what a process without the room logs', () => {
  it('is posted in the room of another, once, for a studio where somebody has come in', async () => {
    const file = await newDatabase('empty_logbook');
    const { app, studio, ...room } = await testRoom({ file });
    const without = await openApp({
      file,
      clock: systemClock,
      onBug: (error) => expect(error).toBeUndefined(),
    });
    onTestFinished(() => without.store.close());
    const log = {
      info: () => undefined,
      warn: () => undefined,
      error: (about: object) => expect(about).toEqual({}),
    };
    const desk = postElsewhere(without, log);
    const tove = await without.store.people.memberOf(studio, 'discord', '81', 'Tove');
    const speaker = { studio, member: tove, role: 'keeper', now: systemClock.now() } as const;
    const say = (line: string, key: string) => speak(line, key, speaker, { desk, words: en });
    await say(gullGrey, 'discord:1');
    await pause(300);
    expect(await app.store.room(studio).posts.latest(9)).toEqual([]);
    const ears = await (await phoneOf({ app, studio, ...room }, 'Ilse')).listen();
    for (const key of ['discord:2', 'discord:2', 'discord:3']) await say('/stirred bucket:1', key);
    await say('/water-or-stir bucket:1', 'discord:4');
    await ears.until(2);
    expect(ears.posts.map(({ name, line }) => [name, line])).toEqual([
      ['Tove', '/stirred bucket:1'],
      ['Tove', '/stirred bucket:1'],
    ]);
  });

  it('is posted no more for a member who was forgotten while it was on its way, and once for one who was linked', async () => {
    const store = await openTestStore();
    const studio = await store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
    const [ana, knot, wren] = [
      await store.people.memberOf(studio, 'discord', '11', 'Ana'),
      await store.people.memberOf(studio, 'room', 'knot', 'Knot'),
      await store.people.memberOf(studio, 'room', 'wren', 'Wren'),
    ];
    const { posts } = store.room<string>(studio);
    const post = (member: MemberId, act: string) =>
      posts.add({
        key: `room:${member}:${act}`,
        id: act,
        at: noonPlus(0),
        member,
        line: '/x',
        private: false,
        reply: 'said',
      });
    expect(await post(knot, 'a')).toBe(1);
    await store.books.writeOnce(studio, 'people', async (book) => {
      const { code } = await book.offerLink(ana, noonPlus(1));
      await book.link(knot, code, noonPlus(1));
      await book.forget(wren);
      return { keep: true, value: null };
    });
    expect(await post(wren, 'b')).toBeUndefined();
    expect(await post(knot, 'a')).toBe(1);
    expect(await post(ana, 'a')).toBe(1);
    expect(await post(knot, 'c')).toBe(2);
    await store.erased();
    expect(await posts.latest(9)).toMatchObject([
      { no: 1, member: ana },
      { no: 2, member: ana },
    ]);
  });
});

describe('signing in where two processes let people in', () => {
  it('is told by one of them the passcode, although both start at once', async () => {
    const file = await newDatabase('empty_logbook');
    const rooms = await Promise.all([testRoom({ file }), testRoom({ file })]);
    expect(rooms.filter(({ passcode }) => passcode !== '')).toHaveLength(1);
  });

  it('holds at both, until it ends at one', async () => {
    const { one, other } = await twoRooms();
    const ilse = await phoneOf(one, 'Ilse');
    const moved = samePhone(ilse, other);
    expect((await moved.get('/api/studio')).status).toBe(200);
    const ears = await moved.listen();
    const ended = new Promise<void>((resolve) => ears.message.once('close', resolve));
    expect((await ilse.post('/api/sign-out', {})).status).toBe(200);
    expect((await moved.get('/api/studio')).status).toBe(401);
    await ended;
    const again = await phoneOf(other, 'Ilse');
    expect((await samePhone(again, one).get('/api/studio')).status).toBe(200);
  });

  it('counts wrong tries at both together, by name and by address', async () => {
    const { one, other } = await twoRooms();
    await phoneOf(one, 'Ilse');
    const statuses: number[] = [];
    for (let i = 0; i < 12; i += 1) {
      const phone = new Phone((i % 2 === 0 ? one : other).port);
      const got = await phone.signIn({ name: 'Ilse', secret: `wrong guess ${i}`, passcode: '' });
      statuses.push(got.status);
    }
    // Ten at once from one address and for one name, of which Ilse's own sign-in was one; each process alone would allow ten.
    expect(statuses.filter((status) => status === 401).length).toBeLessThanOrEqual(10);
    expect(statuses).toContain(429);
  });

  it('keeps no name and no address in the tries that it counts, and drops old ones', async () => {
    const { file, one, other } = await twoRooms();
    await phoneOf(one, 'Ilse');
    const kept = JSON.stringify(await queryAt(file, 'select * from tries'));
    expect(kept).not.toMatch(/ilse|127\.0\.0\.1/i);
    await queryAt(file, 'update tries set until = until - 7200000');
    const before = await queryAt(file, 'select 1 from tries');
    expect(before.length).toBeGreaterThan(0);
    await phoneOf(other, 'Mara');
    const after = await queryAt(
      file,
      'select until from tries where until < extract(epoch from now()) * 1000 - 3600000',
    );
    expect(after).toEqual([]);
  });

  it('spends an invitation once', async () => {
    const { one, other } = await twoRooms();
    const code = /#join=([\w-]+)/.exec(await one.room.invitation('join'))?.[1] ?? '';
    const tries = await Promise.all(
      [one, other].map(({ port }, i) =>
        new Phone(port).signIn({ name: `Guest ${i}`, secret: 'likes clay a lot', code }),
      ),
    );
    expect(tries.map(({ status }) => status).toSorted()).toEqual([200, 400]);
  });
});

it('a process that is cut off from the database goes on when it is back', async () => {
  const { file, one, other } = await twoRooms();
  await sayAsKeeper(one, gullGrey);
  const [ilse, mara] = [await phoneOf(one, 'Ilse'), await phoneOf(other, 'Mara')];
  const ears = await mara.listen();
  onTestFinished(() => void ears.message.destroy());
  await queryAt(
    file,
    'select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()',
  );
  await ilse.say('/stirred bucket:1 minutes:1');
  await ears.until(1);
  expect(numbersOf(ears.posts)).toEqual([1]);
});
