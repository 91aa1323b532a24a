import { describe, expect, it } from 'vitest';
import { openStore } from '../../src/store/openStore.ts';
import { streamNo, type MemberId, type StudioId } from '../../src/studio/ids.ts';
import type { LogbookStore } from '../../src/studio/logbook/ports.ts';
import { newDatabase } from '../helpers/postgres/databases.ts';
import { openProxy } from '../helpers/postgres/proxy.ts';
import { gullGrey, loggedAt, water } from '../helpers/store/storeEvents.ts';
import { openTestStore, settableClock } from '../helpers/store/storeFile.ts';

const bucket = streamNo(1);

const opened = async (file: string) => {
  const store = await openTestStore({ file });
  const studio = await store.people.studioOf('discord', '1', 'Wrackline Clay Co-op');
  const ana = await store.people.memberOf(studio, 'discord', '11', 'Ana');
  await store.books.writeOnce(studio, 'open', async (book) => {
    await book.open(gullGrey, loggedAt(ana, 0));
    return { keep: true, value: 'opened' };
  });
  return { ...store, studio, ana };
};

const log = (books: LogbookStore, studio: StudioId, ana: MemberId, key: string) =>
  books.writeOnce(studio, key, async (book) => {
    const { entry } = await book.log(bucket, water(100), loggedAt(ana, 1));
    return { keep: true, value: entry.id, repeated: 'told before' };
  });

describe('a connection that is cut at the commit', () => {
  it.each(['before', 'after'] as const)(
    'logs the entry once and tells its number: cut %s the server hears of it',
    async (when) => {
      const proxy = await openProxy(await newDatabase('empty_logbook'));
      const { books, studio, ana } = await opened(proxy.address);
      proxy.cutAtCommit(when);
      expect(await log(books, studio, ana, 'cut')).toBe('1-2');
      expect(proxy.cuts).toBe(1);
      expect(await log(books, studio, ana, 'cut')).toBe('told before');
      expect(await log(books, studio, ana, 'next')).toBe('1-3');
      expect(await books.read(studio, (book) => book.entries(bucket, { most: 9 }))).toHaveLength(3);
    },
  );
});

describe('two processes on one database', () => {
  it('see what the other has logged, also in what they remember', async () => {
    const address = await newDatabase('empty_logbook');
    const one = await opened(address);
    const other = await openTestStore({ file: address });
    const { studio, ana } = one;
    const seen = (store: { books: LogbookStore }) =>
      store.books.read(studio, async (book) => (await book.bucket(bucket))?.seq);
    expect([await seen(one), await seen(other)]).toEqual([1, 1]);
    expect(await log(other.books, studio, ana, 'a')).toBe('1-2');
    expect([await seen(one), await seen(other)]).toEqual([2, 2]);
    expect(await log(one.books, studio, ana, 'b')).toBe('1-3');
    expect([await seen(one), await seen(other)]).toEqual([3, 3]);
  });

  it('answer a request that comes to both of them at once the same way, and log it once', async () => {
    const address = await newDatabase('empty_logbook');
    const one = await opened(address);
    const other = await openTestStore({ file: address });
    const { studio, ana } = one;
    const keys = Array.from({ length: 20 }, (_, i) => `key ${i}`);
    const say = (books: LogbookStore) =>
      Promise.all(
        keys.map((key) =>
          books.writeOnce(studio, key, async (book) => {
            const { entry } = await book.log(bucket, water(1), loggedAt(ana, 1));
            return { keep: true, value: entry.id };
          }),
        ),
      );
    const [here, there] = await Promise.all([say(one.books), say(other.books)]);
    expect(here).toEqual(there);
    expect(new Set(here).size).toBe(20);
    const entries = await other.books.read(studio, (book) => book.entries(bucket, { most: 99 }));
    expect(entries.map(({ seq }) => seq)).toEqual(Array.from({ length: 21 }, (_, i) => 21 - i));
  });

  it('may be of the same release and start on an empty database at the same moment', async () => {
    const address = await newDatabase();
    const clock = settableClock();
    const both = await Promise.all([openStore(address, { clock }), openStore(address, { clock })]);
    const studios = await Promise.all(both.map(({ people }) => people.studioOf('discord', '1', 'Wrackline')));
    expect(new Set(studios).size).toBe(1);
    for (const store of both) await store.close();
  });
});

describe('a studio that is asked much of', () => {
  it('keeps no other studio waiting, although one of its requests takes long', async () => {
    const store = await opened(await newDatabase('empty_logbook'));
    const other = await store.people.studioOf('discord', '2', 'Another');
    let finish: () => void = () => undefined;
    const finished = new Promise<void>((resolve) => (finish = resolve));
    const long = store.books.writeOnce(store.studio, 'long', async (book) => {
      await finished;
      await book.log(bucket, water(1), loggedAt(store.ana, 1));
      return { keep: true, value: 'long' };
    });
    const behind = Array.from({ length: 30 }, (_, i) => log(store.books, store.studio, store.ana, `${i}`));
    const quick = await store.books.writeOnce(other, 'quick', async () => ({ keep: true, value: 'quick' }));
    expect(quick).toBe('quick');
    finish();
    expect(await long).toBe('long');
    expect(await Promise.all(behind)).toHaveLength(30);
  });
});
