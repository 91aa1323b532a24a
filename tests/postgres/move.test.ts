import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { expect, describe, it } from 'vitest';
import { moveLogbook } from '../../src/store/move/moveLogbook.ts';
import { everyTable } from '../../src/store/move/everyTable.ts';
import { checkStates } from '../../src/store/states/checkStates.ts';
import type { Store } from '../../src/store/openStore.ts';
import { instant, later, hours, streamNo, type StudioId } from '../../src/studio/ids.ts';
import { newDatabase, queryAt } from '../helpers/postgres/databases.ts';
import { exportText } from '../helpers/store/exportText.ts';
import { gullGrey, loggedAt, noonPlus, stirredReading, water } from '../helpers/store/storeEvents.ts';
import { openTestStore, storeFile } from '../helpers/store/storeFile.ts';

/** Fills an open store with two studios that have something of everything that is stored. */
const fill = async (store: Store, entries: number): Promise<StudioId[]> => {
  const studios: StudioId[] = [];
  for (const server of ['1', '2']) {
    const studio = await store.people.studioOf('discord', server, `Studio ${server} „Ö“`);
    studios.push(studio);
    const ana = await store.people.memberOf(studio, 'discord', '11', 'Ana');
    const knot = await store.people.memberOf(studio, 'room', 'knot', 'Knot');
    await store.books.writeOnce(studio, 'fill', async (book) => {
      await book.logStudio({ kind: 'zone', zone: 'America/St_Johns' }, loggedAt(ana, 0));
      await book.open(gullGrey, loggedAt(ana, 0));
      for (let i = 1; i <= entries; i += 1)
        await book.log(streamNo(1), water(i), loggedAt(ana, i, `note ${i}`));
      await book.log(streamNo(1), stirredReading(1.45), loggedAt(ana, 0.5));
      await book.logCoat({ kind: 'on', resist: 'wax', pieces: 'bowl' }, loggedAt(ana, 1));
      await book.keepNote({ title: 'Tap', text: 'The left one drips.', words: '', by: ana, at: noonPlus(0) });
      await book.keepQuestion({ text: 'Where is the sieve?', at: noonPlus(0) });
      await book.countToday(ana, noonPlus(0));
      return { keep: true, value: 'filled' };
    });
    await store.books.writeOnce(studio, 'link', async (book) => {
      const { code } = await book.offerLink(ana, noonPlus(1));
      return { keep: true, value: await book.link(knot, code, noonPlus(1)) };
    });
    store.heldLines.hold(studio, '/stirred bucket:1', later(noonPlus(0), hours(90)));
    const { door, posts } = store.room<string>(studio);
    await door.begin({ hash: `h${server}`, member: ana, name: 'Ana', until: later(noonPlus(0), hours(90)) });
    await door.addCode(`c${server}`, 'join', later(noonPlus(0), hours(90)));
    const post = { no: 1, key: 'k', id: 'k', at: noonPlus(0), member: ana, line: '/x', private: false };
    await posts.keep([{ ...post, reply: 'said' }]);
  }
  await store.kept.set('room-pepper', 'pepper');
  return studios;
};

const told = async (where: string, studios: readonly StudioId[]) => {
  const store = await openTestStore({ file: where });
  const texts = await Promise.all(studios.map((studio) => exportText(store, studio)));
  const repeated = await store.books.writeOnce(studios[0] ?? never(), 'fill', () =>
    Promise.reject(new Error('it ran again')),
  );
  await store.close();
  return { texts, repeated };
};

const never = (): never => {
  throw new Error('there is a studio');
};

describe('a move', () => {
  it('takes every studio from a file to a database and back, as it was', async () => {
    const [from, to, back] = [storeFile(), await newDatabase(), storeFile()];
    const store = await openTestStore({ file: from });
    const studios = await fill(store, 30);
    await store.close();
    const before = await told(from, studios);
    expect(await moveLogbook(from, to)).toMatchObject({ studios: 2, entries: 68 });
    expect(await told(to, studios)).toEqual(before);
    expect(await moveLogbook(to, back)).toMatchObject({ studios: 2, entries: 68 });
    expect(await told(back, studios)).toEqual(before);
    expect(await checkStates(back)).toMatchObject({ studios: 2, differing: [] });
    // The bot goes on where it was moved to, with new numbers of its own.
    const next = await openTestStore({ file: to });
    await next.books.writeOnce(studios[0] ?? never(), 'next', async (book) => {
      const ana = (await book.members())[0]?.id ?? never();
      await book.logCoat({ kind: 'on', resist: 'wax', pieces: 'plate' }, loggedAt(ana, 2));
      return { keep: true, value: null };
    });
    expect(
      await next.reminders.claim(instant(noonPlus(0) + 9e8), instant(noonPlus(0) + 9.1e8), 9),
    ).not.toEqual([]);
  });

  it('knows every table', async () => {
    const tables = await queryAt(
      await newDatabase('empty_logbook'),
      "select tablename from pg_tables where schemaname = 'public' and tablename <> 'logbook_schema'",
    );
    expect(everyTable.map(({ name }) => name).sort()).toEqual(
      tables.map(({ tablename }) => tablename).sort(),
    );
  });

  it('is refused to where there is a studio, and from where a bot is running', async () => {
    const [from, to] = [storeFile(), await newDatabase()];
    const store = await openTestStore({ file: from });
    await store.people.studioOf('discord', '1', 'Wrackline');
    await expect(moveLogbook(from, to)).rejects.toMatchObject({ kind: 'locked' });
    await store.close();
    await moveLogbook(from, to);
    await expect(moveLogbook(from, to)).rejects.toMatchObject({ kind: 'not-empty' });
    const running = await openTestStore({ file: to });
    await expect(moveLogbook(to, storeFile())).rejects.toMatchObject({ kind: 'locked' });
    await running.close();
    expect(await moveLogbook(to, storeFile())).toMatchObject({ studios: 1 });
  });

  it('takes what another program commits while the move waits for it', async () => {
    const [from, to] = [await newDatabase('empty_logbook'), storeFile()];
    const other = new pg.Client(from);
    await other.connect();
    await other.query("begin; insert into studios (id, name, created_at) values ('s', 'Wrackline', 0)");
    const moving = moveLogbook(from, to);
    const waits = "select 1 from pg_locks where not granted and mode = 'ExclusiveLock'";
    while ((await queryAt(from, waits)).length === 0) await pause(10);
    await other.query('commit');
    await other.end();
    expect(await moving).toMatchObject({ studios: 1 });
  });

  it('that is killed anywhere leaves nothing half moved, and can be run again', async () => {
    const [from, to] = [storeFile(), await newDatabase('empty_logbook')];
    const store = await openTestStore({ file: from });
    const studios = await fill(store, 800);
    await store.close();
    const before = await told(from, studios);
    const bin = fileURLToPath(new URL('../../src/bin/move.ts', import.meta.url));
    const counted = async () => Number((await queryAt(to, 'select count(*) as all from events'))[0]?.['all']);
    const begun = async () =>
      (
        await queryAt(
          to,
          "select 1 from pg_stat_activity where datname = current_database() and query like '%insert into%'",
        )
      ).length > 1;
    for (const milliseconds of [0, 60, 150]) {
      const child = spawn(process.execPath, [bin, from, to], { stdio: 'ignore' });
      const ended = once(child, 'exit');
      for (let looks = 0; looks < 400 && child.exitCode === null && !(await begun()); looks += 1)
        await pause(20);
      await pause(milliseconds);
      child.kill(milliseconds === 60 ? 'SIGINT' : 'SIGKILL');
      await ended;
      expect([0, 1608]).toContain(await counted());
    }
    if ((await counted()) === 0) await moveLogbook(from, to);
    expect(await told(to, studios)).toEqual(before);
  });
});
