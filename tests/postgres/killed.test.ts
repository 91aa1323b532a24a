import { describe, expect, it, onTestFinished } from 'vitest';
import { checkStates } from '../../src/store/states/checkStates.ts';
import { openStore } from '../../src/store/openStore.ts';
import { instant, seq, streamNo } from '../../src/studio/ids.ts';
import { endLeases, newDatabase, queryAt } from '../helpers/postgres/databases.ts';
import { startPostgres } from '../helpers/postgres/server.ts';
import { startWriter, type StoreProcess } from '../helpers/store/storeProcess.ts';
import { openTestStore, settableClock } from '../helpers/store/storeFile.ts';

const acknowledgedBy = (writers: readonly StoreProcess[]) =>
  writers
    .flatMap(({ lines }) => lines.slice(1))
    .filter((line) => line.includes(' '))
    .map((line): [string, string] => {
      const [key = '', entry = ''] = line.split(' ');
      return [key, entry];
    });

/** Nothing that a writer was told of is lost, nothing is there twice, and every state follows from the entries. */
const expectAllThere = async (address: string, acknowledged: readonly [key: string, entry: string][]) => {
  expect(new Set(acknowledged.map(([, entry]) => entry)).size).toBe(acknowledged.length);
  const store = await openTestStore({ file: address });
  const studio = await store.people.studioOf('terminal', 'here', '');
  const entries = await store.books.read(studio, (book) => book.entries(streamNo(1), { most: 1e6 }));
  expect(entries.map((entry) => entry.seq)).toEqual(entries.map((_, i) => seq(entries.length - i)));
  const ids = new Set<string>(entries.map(({ id }) => id));
  for (const [key, entry] of acknowledged) {
    expect(ids).toContain(entry);
    const again = await store.books.writeOnce(studio, key, () => Promise.reject(new Error('it ran again')));
    expect(again).toBe(entry);
  }
  expect(await checkStates(address)).toMatchObject({ studios: 1, streams: 1, differing: [] });
};

const until = async (writer: StoreProcess, more: number) => {
  const enough = writer.lines.length + more;
  await writer.line(() => writer.lines.length >= enough);
};

describe('two processes that write to one database', () => {
  it('lose nothing acknowledged and double nothing when one is killed, and then the other', async () => {
    const address = await newDatabase('empty_logbook');
    const writers = [startWriter(address, 'log'), startWriter(address, 'log')] as const;
    await Promise.all(writers.map((writer) => until(writer, 30)));
    await writers[0].kill();
    await until(writers[1], 30);
    const third = startWriter(address, 'log');
    await until(third, 20);
    await Promise.all([writers[1].kill(), third.kill()]);
    await expectAllThere(address, acknowledgedBy([...writers, third]));
  });

  it('go on after the server was stopped as by a power failure', async () => {
    const server = await startPostgres();
    onTestFinished(() => server.stop());
    await queryAt(server.address('postgres'), 'create database studio');
    const address = server.address('studio');
    const writers = [startWriter(address, 'log'), startWriter(address, 'log')] as const;
    await Promise.all(writers.map((writer) => until(writer, 20)));
    await server.restart();
    await Promise.all(writers.map((writer) => until(writer, 40)));
    await Promise.all(writers.map((writer) => writer.kill()));
    await expectAllThere(address, acknowledgedBy(writers));
  });
});

describe('reminders of two processes', () => {
  it('are each claimed once, and none that the other has claimed is taken back at a start', async () => {
    const address = await newDatabase('empty_logbook');
    const clock = settableClock();
    const [one, other] = [await openTestStore({ file: address, clock }), await openStore(address, { clock })];
    onTestFinished(() => other.close());
    const studio = await one.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
    const wren = await one.people.memberOf(studio, 'terminal', 'Wren', 'Wren');
    const evening = instant(Date.UTC(2026, 2, 1, 19));
    const morning = instant(Date.UTC(2026, 2, 2, 8));
    const leaseEnds = instant(morning + 120_000);
    await one.books.writeOnce(studio, 'coats', async (book) => {
      for (let i = 0; i < 30; i += 1)
        await book.logCoat(
          { kind: 'on', resist: 'wax', pieces: `bowl ${i}` },
          { at: evening, loggedAt: evening, by: wren },
        );
      return { keep: true, value: null };
    });
    const claims = await Promise.all(
      Array.from({ length: 12 }, (_, i) =>
        (i % 2 === 0 ? one : other).reminders.claim(morning, leaseEnds, 5),
      ),
    );
    const keys = claims.flat().map(({ key }) => key);
    expect(keys.length).toBe(30);
    expect(new Set(keys).size).toBe(30);
    const third = await openTestStore({ file: address, clock });
    await third.reminders.reclaim(instant(morning + 1_000));
    expect(await third.reminders.claim(instant(morning + 1_000), leaseEnds, 50)).toEqual([]);
    await endLeases(address);
    expect(await third.reminders.claim(leaseEnds, instant(leaseEnds + 1), 50)).toHaveLength(30);
  });
});
