import { describe, expect, it } from 'vitest';
import { seq, streamNo, studioStream } from '../../../src/studio/ids.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { gullGrey, loggedAt, noonPlus, stirredReading, water } from '../../helpers/store/storeEvents.ts';
import { openTestStore, settableClock } from '../../helpers/store/storeFile.ts';

const opened = async () => {
  const store = await openTestStore();
  const studio = await store.people.studioOf('discord', '1', 'Wrackline Clay Co-op');
  const ana = await store.people.memberOf(studio, 'discord', '11', 'Ana');
  const bucket = await store.books.writeOnce(studio, 'open', async (book) => {
    const { state } = await book.open(gullGrey, loggedAt(ana, 0));
    return { keep: true, value: state.no };
  });
  return { store, studio, ana, bucket: streamNo(bucket) };
};

describe('a logbook', () => {
  it('numbers buckets from 1, and their entries from 1 each', async () => {
    const { store, studio, ana } = await opened();
    const ids = await store.books.writeOnce(studio, 'more', async (book) => {
      const second = await book.open({ ...gullGrey, name: 'Tern White' }, loggedAt(ana, 1));
      const first = await book.log(streamNo(1), water(450), loggedAt(ana, 2));
      return { keep: true, value: [second.entry.id, first.entry.id] };
    });
    expect(ids).toEqual(['2-1', '1-2']);
  });

  it('answers after a restart what it answered before', async () => {
    const { store, studio, ana, bucket } = await opened();
    await store.books.writeOnce(studio, 'reading', async (book) => {
      const { entry } = await book.log(bucket, stirredReading(1.45), loggedAt(ana, 5, 'from the top'));
      await book.logStudio({ kind: 'zone', zone: 'America/St_Johns' }, loggedAt(ana, 6));
      return { keep: true, value: entry.id };
    });
    const look = () =>
      store.books.read(studio, async (book) => ({
        studio: await book.studio(),
        buckets: await book.buckets(),
        entries: await book.entries(bucket, { most: 10 }),
        own: await book.entries(studioStream, { most: 10 }),
        members: await book.members(),
      }));
    const before = await look();
    expect(before.studio.zone).toBe('America/St_Johns');
    expect(before.buckets[0]?.believed?.value).toBe(1.45);
    expect(before.entries.map(({ id, note }) => [id, note])).toEqual([
      ['1-2', 'from the top'],
      ['1-1', undefined],
    ]);

    await store.close();
    const again = await openStore(store.file, { clock: settableClock() });
    const after = await again.books.read(studio, async (book) => ({
      studio: await book.studio(),
      buckets: await book.buckets(),
      entries: await book.entries(bucket, { most: 10 }),
      own: await book.entries(studioStream, { most: 10 }),
      members: await book.members(),
    }));
    await again.close();
    expect(after).toEqual(before);
  });

  it('folds a back-dated entry in where it happened, and an undo as if the entry had never been', async () => {
    const { store, studio, ana, bucket } = await opened();
    const log = (key: string, event: Parameters<typeof water>[0] | 'undo', minutes: number) =>
      store.books.writeOnce(studio, key, async (book) => {
        const done =
          event === 'undo'
            ? await book.log(bucket, { kind: 'undo', of: seq(2) }, loggedAt(ana, minutes))
            : await book.log(bucket, water(event), loggedAt(ana, minutes));
        return { keep: true, value: done.state };
      });
    await log('a', 450, 10);
    await log('b', 300, 5);
    const undone = await log('c', 'undo', 20);
    const straight = await store.books.writeOnce(studio, 'straight', async (book) => {
      const { state: other } = await book.open(gullGrey, loggedAt(ana, 0));
      const { state } = await book.log(other.no, water(300), loggedAt(ana, 5));
      return { keep: true, value: state };
    });
    expect({ ...undone, no: 0, seq: 0 }).toEqual({
      ...straight,
      no: 0,
      seq: 0,
      unknownSince: undone.unknownSince,
    });
    expect(undone.foldedTo).toBe(noonPlus(5));
    const [first] = await store.books.read(studio, (book) =>
      book.entries(bucket, { before: seq(3), most: 1 }),
    );
    expect(first).toMatchObject({ seq: 2, undoneBy: 4 });
  });

  it('gives a repeated request the stored value and logs nothing', async () => {
    const { store, studio, ana, bucket } = await opened();
    let runs = 0;
    const request = () =>
      store.books.writeOnce(studio, 'discord:123', async (book) => {
        runs += 1;
        const { entry } = await book.log(bucket, water(100), loggedAt(ana, 1));
        return { keep: true, value: { entry: entry.id, text: ['as', { said: 'typed' }] } };
      });
    const [first, second] = await Promise.all([request(), request()]);
    expect(await request()).toEqual(first);
    expect(second).toEqual(first);
    expect(runs).toBe(1);
    expect(await store.books.read(studio, (book) => book.entries(bucket, { most: 9 }))).toHaveLength(2);
  });

  it('keeps nothing of work that says so, nor of work that throws, and lets both be tried again', async () => {
    const { store, studio, ana, bucket } = await opened();
    const before = await store.books.read(studio, (book) => book.bucket(bucket));
    const refused = await store.books.writeOnce(studio, 'k', async (book) => {
      await book.log(bucket, water(100), loggedAt(ana, 1));
      return { keep: false, value: 'refused' };
    });
    expect(refused).toBe('refused');
    await expect(
      store.books.writeOnce(studio, 'k', async (book) => {
        await book.log(bucket, water(100), loggedAt(ana, 1));
        throw new Error('a bug');
      }),
    ).rejects.toThrow('a bug');
    expect(await store.books.read(studio, (book) => book.bucket(bucket))).toEqual(before);
    expect(await store.books.read(studio, (book) => book.entries(bucket, { most: 9 }))).toHaveLength(1);
    expect(await store.books.writeOnce(studio, 'k', async () => ({ keep: true, value: 'kept' }))).toBe(
      'kept',
    );
  });
});
