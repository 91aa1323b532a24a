import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import { coatStream, seq, streamNo, type MemberId, type StudioId } from '../../../src/studio/ids.ts';
import type { Store } from '../../../src/store/openStore.ts';
import type { BucketEvent } from '../../../src/studio/bucket/bucketEvent.ts';
import type { CoatEvent } from '../../../src/studio/resist/coatEvent.ts';
import { gullGrey, loggedAt, stirredReading, water } from '../../helpers/store/storeEvents.ts';
import { onPostgres } from '../../helpers/postgres/databases.ts';
import { sqlIn } from '../../helpers/store/sqlIn.ts';
import { openTestStore } from '../../helpers/store/storeFile.ts';

const bucket = streamNo(1);
const rows = z.tuple([z.object({ seq: z.int(), state: z.string() })]);
const everyRow = z.array(z.object({ stream_no: z.int(), seq: z.int() }));

const openWithBucket = async () => {
  const store = await openTestStore();
  const studio = await store.people.studioOf('discord', '1', 'Wrackline Clay Co-op');
  const ana = await store.people.memberOf(studio, 'discord', '11', 'Ana');
  await store.books.writeOnce(studio, 'open', async (book) => {
    await book.open(gullGrey, loggedAt(ana, 0));
    return { keep: true, value: null };
  });
  return { store, studio, ana };
};

const log =
  (store: Store, studio: StudioId, ana: MemberId) =>
  (event: BucketEvent, minutes: number, keep = true) =>
    store.books.writeOnce(studio, `${event.kind} ${minutes}`, async (book) => {
      await book.log(bucket, event, loggedAt(ana, minutes));
      return { keep, value: null };
    });

const bucketIn = (store: Store, studio: StudioId) => store.books.read(studio, (book) => book.bucket(bucket));

const stored = async (file: string) => {
  const [row] = rows.parse(await sqlIn(file, 'select seq, state from streams where stream_no = 1'));
  return { seq: row.seq, stateOf: z.looseObject({ seq: z.int() }).parse(JSON.parse(row.state)).seq };
};

describe.skipIf(onPostgres)('a bucket’s state in a file', () => {
  it('is stored with its first entry and every eighth after it', async () => {
    const { store, studio, ana } = await openWithBucket();
    const found = [];
    for (let n = 1; n <= 17; n += 1) {
      await log(store, studio, ana)(n % 2 ? stirredReading(1.44) : water(100), n);
      found.push(await stored(store.file));
    }
    expect(found.map((row) => row.stateOf)).toEqual([1, 1, 1, 1, 1, 1, 1, 9, 9, 9, 9, 9, 9, 9, 9, 17, 17]);
    expect(found.map((row) => row.seq)).toEqual(found.map((row) => row.stateOf));
  });

  it('is not needed where there is none: what else is logged is counted from its entries', async () => {
    const { store, studio, ana } = await openWithBucket();
    const waxed = (into: Store, minutes: number) =>
      into.books.writeOnce(studio, `waxed ${minutes}`, async (book) => {
        const on: CoatEvent = { kind: 'on', resist: 'wax', pieces: 'bowl' };
        const { entry } = await book.logCoat(on, loggedAt(ana, minutes));
        return { keep: true, value: entry.seq };
      });
    expect([await waxed(store, 1), await waxed(store, 2)]).toEqual([1, 2]);
    await store.close();
    const again = await openTestStore({ file: store.file });
    expect(await waxed(again, 3)).toBe(3);
    const saved = everyRow.parse(
      await sqlIn(store.file, 'select stream_no, seq from streams order by stream_no'),
    );
    expect(saved).toEqual([
      { stream_no: coatStream, seq: 1 },
      { stream_no: bucket, seq: 1 },
    ]);
    expect((await checkStates(store.file)).differing).toEqual([]);
  });

  it('is the same after the program stopped between two times that it was stored', async () => {
    const { store, studio, ana } = await openWithBucket();
    for (let n = 1; n <= 5; n += 1)
      await log(store, studio, ana)(n % 2 ? stirredReading(1.44) : water(100), n);
    const before = await bucketIn(store, studio);
    await store.close();
    const again = await openTestStore({ file: store.file });
    expect(await bucketIn(again, studio)).toEqual(before);
    expect(await checkStates(store.file)).toMatchObject({ streams: 1, outdated: 0, differing: [] });
    await log(again, studio, ana)(water(50), 10);
    expect((await bucketIn(again, studio))?.seq).toBe(7);
  });

  it('is the same when an entry since then was taken back, or is of an earlier time', async () => {
    const { store, studio, ana } = await openWithBucket();
    await log(store, studio, ana)(stirredReading(1.44), 30);
    await log(store, studio, ana)(water(100), 40);
    await log(store, studio, ana)({ kind: 'undo', of: seq(3) }, 50);
    await log(store, studio, ana)(water(200), 20);
    const before = await bucketIn(store, studio);
    await store.close();
    const again = await openTestStore({ file: store.file });
    expect(await bucketIn(again, studio)).toEqual(before);
    expect((await checkStates(store.file)).differing).toEqual([]);
  });

  it('does not count as stored when the entry that would have stored it is not kept', async () => {
    const { store, studio, ana } = await openWithBucket();
    for (let n = 1; n <= 7; n += 1) await log(store, studio, ana)(water(100), n);
    await log(store, studio, ana)(stirredReading(1.44), 8, false);
    expect(await stored(store.file)).toEqual({ seq: 1, stateOf: 1 });
    await log(store, studio, ana)(water(100), 9);
    expect(await stored(store.file)).toEqual({ seq: 9, stateOf: 9 });
  });

  it('differs from its entries when what is stored of an earlier one was changed', async () => {
    const { store, studio, ana } = await openWithBucket();
    for (let n = 1; n <= 3; n += 1) await log(store, studio, ana)(water(100), n);
    await store.close();
    await sqlIn(store.file, `update streams set state = replace(state, '"carried":0', '"carried":1')`);
    expect((await checkStates(store.file)).differing).toMatchObject([{ stream: 1 }]);
  });
});
