import Sqlite from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { sql } from 'kysely';
import { foldBucket } from '../../../src/studio/bucket/fold/foldBucket.ts';
import { memberId, seq, streamNo, studioId, type MemberId, type StudioId } from '../../../src/studio/ids.ts';
import type { LogbookStore, WritableLogbook } from '../../../src/studio/logbook/ports.ts';
import { openDatabase } from '../../../src/store/engine/sqlite/database.ts';
import { migrate } from '../../../src/store/engine/sqlite/migrate.ts';
import { migrations } from '../../../src/store/migrations/migrations.ts';
import { readBucket } from '../../../src/store/entries/readEntries.ts';
import { logbookStore } from '../../../src/store/logbook/logbookStore.ts';
import { TransactionQueue } from '../../../src/store/engine/sqlite/transactionQueue.ts';
import { gullGrey, loggedAt, noonPlus, water } from '../../helpers/store/storeEvents.ts';
import { onPostgres } from '../../helpers/postgres/databases.ts';
import { sqlIn } from '../../helpers/store/sqlIn.ts';
import { openTestStore, settableClock, storeFile } from '../../helpers/store/storeFile.ts';

const bucket = streamNo(1);

const openedStore = async () => {
  const store = await openTestStore();
  const studio = await store.people.studioOf('discord', '1', 'Wrackline Clay Co-op');
  const ana = await store.people.memberOf(studio, 'discord', '11', 'Ana');
  await open(store.books, studio, ana);
  return { ...store, studio, ana };
};

const open = (books: LogbookStore, studio: StudioId, by: MemberId) =>
  books.writeOnce(studio, 'open', async (book) => {
    await book.open(gullGrey, loggedAt(by, 0));
    return { keep: true, value: 'opened' };
  });

const keeping = (work: (book: WritableLogbook) => Promise<unknown>) => async (book: WritableLogbook) => {
  await work(book);
  return { keep: true, value: 'kept' };
};

describe('concurrent requests', () => {
  it('are each kept, dropped or failed alone, in the order in which they came', async () => {
    const { books, studio, ana } = await openedStore();
    const request = (i: number) =>
      books.writeOnce(studio, `discord:${i}`, async (book) => {
        const { entry } = await book.log(bucket, water(i), loggedAt(ana, i));
        if (i % 5 === 3) throw new Error(`bug ${i}`);
        return { keep: i % 5 !== 1, value: entry.seq };
      });
    const all = Array.from({ length: 150 }, (_, i) => i);
    const answers = await Promise.allSettled(all.map(request));
    const kept = all.filter((i) => i % 5 !== 3 && i % 5 !== 1);
    expect(answers.filter(({ status }) => status === 'rejected')).toHaveLength(30);
    const entries = await books.read(studio, (book) => book.entries(bucket, { most: 1000 }));
    expect(entries.reverse().map(({ event }) => event)).toEqual([
      expect.objectContaining({ kind: 'setup' }),
      ...kept.map(water),
    ]);
    expect(entries.map((entry) => entry.seq)).toEqual([...kept.keys(), kept.length].map((i) => i + 1));
  });

  it('are all answered, and none twice, when one of a kind comes twice', async () => {
    const { books, studio, ana } = await openedStore();
    const twice = [...Array(40).keys(), ...Array(40).keys()];
    const answers = await Promise.all(
      twice.map((i) =>
        books.writeOnce(studio, `key ${i}`, async (book) => {
          const { entry } = await book.log(bucket, water(1), loggedAt(ana, 1));
          return { keep: true, value: entry.id };
        }),
      ),
    );
    expect(answers.slice(40)).toEqual(answers.slice(0, 40));
    expect(new Set(answers).size).toBe(40);
  });

  it('let reads in between see whole requests only', async () => {
    const { books, studio, ana } = await openedStore();
    const seen: number[] = [];
    const pair = (i: number) =>
      books.writeOnce(
        studio,
        `pair ${i}`,
        keeping(async (book) => {
          await book.log(bucket, water(1), loggedAt(ana, 1));
          await book.log(bucket, water(2), loggedAt(ana, 1));
        }),
      );
    const look = () =>
      books.read(studio, async (book) => {
        const entries = await book.entries(bucket, { most: 1000 });
        expect((await book.bucket(bucket))?.seq).toBe(entries.length);
        seen.push(entries.length);
      });
    await Promise.all(Array.from({ length: 200 }, (_, i) => (i % 2 ? look() : pair(i))));
    expect(seen.every((length) => length % 2 === 1)).toBe(true);
  });

  it('are logged in order when one of them logs several entries at once', async () => {
    const { books, studio, ana } = await openedStore();
    const all = await books.writeOnce(studio, 'many', async (book) => {
      const other = book.open({ ...gullGrey, name: 'Tern White' }, loggedAt(ana, 0));
      const logged = [1, 2, 3].map((i) => book.log(bucket, water(i), loggedAt(ana, i)));
      return { keep: true, value: (await Promise.all([other, ...logged])).map(({ entry }) => entry.id) };
    });
    expect(all).toEqual(['2-1', '1-2', '1-3', '1-4']);
    expect(
      (await books.read(studio, (book) => book.buckets())).map(({ no, seq: last }) => [no, last]),
    ).toEqual([
      [1, 4],
      [2, 1],
    ]);
  });
});

describe('a logbook after its transaction', () => {
  it('refuses to be read or written', async () => {
    const { books, studio, ana } = await openedStore();
    const leaked: WritableLogbook[] = [];
    await books.writeOnce(
      studio,
      'leak',
      keeping(async (book) => leaked.push(book)),
    );
    const [book] = leaked;
    await expect(book?.log(bucket, water(1), loggedAt(ana, 1))).rejects.toThrow('after its turn');
    await expect(book?.members()).rejects.toThrow('after its turn');
  });
});

describe('states in memory', () => {
  it('cannot be changed by whoever reads them', async () => {
    const { books, studio } = await openedStore();
    const state = await books.read(studio, (book) => book.bucket(bucket));
    expect(() => state?.unknownSince.push(seq(1))).toThrow(TypeError);
    expect(() => state && (state.settings.name = 'Other')).toThrow(TypeError);
  });

  it('are read again when another connection has written to the file', async () => {
    const { books, studio, ana, file } = await openedStore();
    expect((await books.read(studio, (book) => book.studio())).zone).toBe('UTC');
    await sqlIn(
      file,
      'insert into events (studio_id, stream_no, seq, at, logged_at, member_id, event) values (?, 0, 1, 1, 1, ?, ?)',
      studio,
      ana,
      '{"kind":"zone","zone":"America/St_Johns"}',
    );
    await sqlIn(file, 'insert into streams (studio_id, stream_no, seq) values (?, 0, 1)', studio);
    expect((await books.read(studio, (book) => book.studio())).zone).toBe('America/St_Johns');
    const next = await books.writeOnce(studio, 'next', async (book) => {
      const { entry } = await book.logStudio({ kind: 'units', units: 'us' }, loggedAt(ana, 1));
      return { keep: true, value: entry.id };
    });
    expect(next).toBe('s-2');
  });

  it('are folded anew when another version of the fold has cached them', async () => {
    const { books, studio, ana, file, close } = await openedStore();
    await books.writeOnce(
      studio,
      'log',
      keeping((book) => book.log(bucket, water(450), loggedAt(ana, 1))),
    );
    const before = await books.read(studio, (book) => book.buckets());
    await close();
    await sqlIn(file, `update streams set folded_by = 'another', state = '{"no":1}'`);
    const again = await openTestStore({ file });
    expect(await again.books.read(studio, (book) => book.buckets())).toEqual(before);
  });
});

describe.skipIf(onPostgres)('a file that somebody else writes to for a while', () => {
  it('is waited for, without blocking anything else', async () => {
    const { books, studio, ana, file } = await openedStore();
    const other = new Sqlite(file);
    other.exec('begin immediate');
    let ticks = 0;
    const timer = setInterval(() => (ticks += 1), 5);
    const logged = books.writeOnce(
      studio,
      'log',
      keeping((book) => book.log(bucket, water(1), loggedAt(ana, 1))),
    );
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(ticks).toBeGreaterThan(0);
    other.exec('commit');
    other.close();
    expect(await logged).toBe('kept');
    clearInterval(timer);
  });
});

describe.skipIf(onPostgres)('a transaction that cannot be committed', () => {
  it('fails all requests in it, keeps nothing of them, and does not block the next', async () => {
    const database = openDatabase(storeFile(), migrations.length);
    await migrate(database, migrations);
    const turns = new TransactionQueue(database);
    onTestFinished(async () => {
      await turns.close();
      database.sqlite.close();
    });
    const books = logbookStore(turns, settableClock());
    const studio = studioId('s');
    const ana = memberId('ana');
    await database.kysely
      .insertInto('studios')
      .values({ id: studio, name: '', created_at: noonPlus(0) })
      .execute();
    await open(books, studio, ana);
    const log = () =>
      books.writeOnce(
        studio,
        'log',
        keeping((book) => book.log(bucket, water(450), loggedAt(ana, 1))),
      );
    const breaking = turns.write('directory', async ({ db }) => {
      await sql`pragma defer_foreign_keys = on`.execute(db);
      await db
        .insertInto('members')
        .values({ studio_id: studioId('nowhere'), id: ana, name: '', created_at: noonPlus(0) })
        .execute();
      return { keep: true, value: 1 };
    });
    const together = await Promise.allSettled([log(), breaking]);
    expect(together.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
    expect((await books.read(studio, (book) => book.bucket(bucket)))?.seq).toBe(1);
    expect(await log()).toBe('kept');
    const entries = await readBucket(database.kysely, studio, bucket);
    expect(entries).toHaveLength(2);
    expect(await books.read(studio, (book) => book.bucket(bucket))).toEqual(foldBucket(bucket, entries));
  });
});

describe('a closed store', () => {
  it('has finished what it was asked before, and refuses what it is asked after', async () => {
    const { books, studio, ana, close } = await openedStore();
    const log = (key: string) =>
      books.writeOnce(
        studio,
        key,
        keeping((book) => book.log(bucket, water(1), loggedAt(ana, 1))),
      );
    const before = log('before');
    await close();
    expect(await before).toBe('kept');
    await expect(log('after')).rejects.toMatchObject({ name: 'StoreProblem', kind: 'closed' });
  });

  it('has waited for whoever read beside it, and lets nobody else do so', async () => {
    const { books, studio, close } = await openedStore();
    const { promise: allowed, resolve: allow } = Promise.withResolvers<void>();
    const begun = Promise.withResolvers<void>();
    const reading = books.readSnapshot(studio, async (book) => {
      begun.resolve();
      await allowed;
      return (await book.buckets()).length;
    });
    await begun.promise;
    let isClosed = false;
    const closing = close().then(() => (isClosed = true));
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(isClosed).toBe(false);
    allow();
    expect(await reading).toBe(1);
    await closing;
    await expect(books.readSnapshot(studio, () => Promise.resolve(1))).rejects.toMatchObject({
      kind: 'closed',
    });
  });
});

describe.skipIf(onPostgres)('a turn that goes wrong where nobody thought of it', () => {
  /** Asked what it is, it throws again. */
  const unspeakable = () =>
    new Proxy(new Error('planted'), {
      getPrototypeOf() {
        throw new Error('planted within');
      },
    });

  it.each<[string, (turns: TransactionQueue) => Promise<unknown>]>([
    [
      'before its work begins',
      (turns) =>
        turns.alone(() => {
          throw new Error('planted');
        }),
    ],
    ['in a read', (turns) => turns.read('directory', () => Promise.reject(unspeakable()))],
    ['in a write', (turns) => turns.write('directory', () => Promise.reject(unspeakable()))],
  ])('%s fails for whoever asked for it alone, and the next turn comes', async (_, ask) => {
    const database = openDatabase(storeFile(), migrations.length);
    await migrate(database, migrations);
    const turns = new TransactionQueue(database);
    onTestFinished(() => void database.sqlite.close());
    await expect(ask(turns)).rejects.toThrow('planted');
    const kept = await turns.write('directory', async ({ db }) => {
      await db
        .insertInto('studios')
        .values({ id: studioId('s'), name: '', created_at: noonPlus(0) })
        .execute();
      return { keep: true, value: 'kept' };
    });
    expect(kept).toBe('kept');
    expect(
      await turns.read('directory', ({ db }) => db.selectFrom('studios').select('id').execute()),
    ).toHaveLength(1);
    await turns.close();
  });
});
