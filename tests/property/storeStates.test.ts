import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BucketEvent } from '../../src/studio/bucket/bucketEvent.ts';
import { foldBucket } from '../../src/studio/bucket/fold/foldBucket.ts';
import { foldStudio } from '../../src/studio/settings/foldStudio.ts';
import { memberId, seq, streamNo, studioStream, type MemberId, type StudioId } from '../../src/studio/ids.ts';
import type { LogbookStore, Logbook, Logged, WritableLogbook } from '../../src/studio/logbook/ports.ts';
import type { StudioEvent } from '../../src/studio/settings/studio.ts';
import { checkStates } from '../../src/store/states/checkStates.ts';
import { readBucketEvent, readStudioEvent, writeEvent } from '../../src/store/entries/eventRow.ts';
import { openStore, type Store } from '../../src/store/openStore.ts';
import { ordinary, setup, studioEvent, typed } from '../helpers/store/storeArbitraries.ts';
import { loggedAt } from '../helpers/store/storeEvents.ts';
import { onPostgres } from '../helpers/postgres/databases.ts';
import { newLogbook, settableClock } from '../helpers/store/storeFile.ts';

const clock = settableClock();

/** A studio's action, valid in any state: `which` is an index modulo what there is. */
type Step =
  | { do: 'open'; event: Extract<BucketEvent, { kind: 'setup' }> }
  | { do: 'log'; which: number; event: BucketEvent; minutes: number; note: string }
  | { do: 'undo'; which: number; of: number }
  | { do: 'tell'; event: StudioEvent };
interface Request {
  studio: 0 | 1;
  steps: Step[];
  ends: 'kept' | 'dropped' | 'thrown';
}

const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 1, arbitrary: fc.record({ do: fc.constant('open' as const), event: setup }) },
  {
    weight: 6,
    arbitrary: fc.record({
      do: fc.constant('log' as const),
      which: fc.nat(5),
      event: ordinary,
      minutes: fc.integer({ min: 0, max: 40 }).map((half) => half * 30),
      note: typed,
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('undo' as const), which: fc.nat(5), of: fc.nat(20) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('tell' as const), event: studioEvent }) },
);
const request: fc.Arbitrary<Request> = fc.record({
  studio: fc.constantFrom(0 as const, 1 as const),
  steps: fc.array(step, { minLength: 1, maxLength: 5 }),
  ends: fc.oneof(
    { weight: 6, arbitrary: fc.constant('kept' as const) },
    fc.constantFrom('dropped' as const, 'thrown' as const),
  ),
});

const take = async (book: WritableLogbook, one: Step, logged: (minutes: number, note?: string) => Logged) => {
  if (one.do === 'tell') return book.logStudio(one.event, logged(0));
  if (one.do === 'open') {
    const { settings, volume } = one.event;
    return book.open({ ...settings, ...(volume !== undefined && { volume }) }, logged(60));
  }
  const buckets = await book.buckets();
  const bucket = buckets[one.which % Math.max(1, buckets.length)];
  if (!bucket) return undefined;
  if (one.do === 'log') return book.log(bucket.no, one.event, logged(one.minutes, one.note));
  // Never the setup, which is the first entry: without it there is no bucket.
  if (bucket.seq < 2) return undefined;
  return book.log(bucket.no, { kind: 'undo', of: seq(2 + (one.of % (bucket.seq - 1))) }, logged(6000));
};

const everything = async (book: Logbook) => {
  const buckets = await book.buckets();
  const streams = [studioStream, ...buckets.map(({ no }) => no)];
  return {
    studio: await book.studio(),
    buckets,
    entries: await Promise.all(streams.map((stream) => book.history(stream, { after: seq(0), most: 1000 }))),
  };
};

/** Two studios whose requests have the same keys. */
const keyed = (requests: Request[]) =>
  requests.map((one, i) => ({
    ...one,
    key: `key ${requests.slice(0, i).filter(({ studio }) => studio === one.studio).length}`,
    value: i,
  }));

/** On PostgreSQL the requests go to several processes' stores in turn. */
const run = async (
  stores: readonly [Pick<Store, 'books'>, ...Pick<Store, 'books'>[]],
  studios: readonly [StudioId, StudioId],
  members: readonly [MemberId, MemberId],
  requests: ReturnType<typeof keyed>,
) => {
  const answers = requests.map(({ studio, steps, ends, key, value }, i) =>
    (stores[i % stores.length] ?? stores[0]).books.writeOnce(studios[studio], key, async (book) => {
      for (const one of steps)
        await take(book, one, (minutes, note) => loggedAt(members[studio], minutes, note));
      if (ends === 'thrown') throw new Error('thrown');
      return { keep: ends === 'kept', value };
    }),
  );
  const settled = await Promise.allSettled(answers);
  const rejected = settled.flatMap((one) => (one.status === 'rejected' ? [one.reason] : []));
  expect(rejected.filter((reason) => !(reason instanceof Error && reason.message === 'thrown'))).toEqual([]);
};

const twoStudios = async ({ people }: Store): Promise<[StudioId, StudioId]> => [
  await people.studioOf('d', '1', ''),
  await people.studioOf('d', '2', ''),
];

const look = (books: LogbookStore, studios: readonly StudioId[]) =>
  Promise.all(studios.map((studio) => books.read(studio, everything)));

const expectToFollow = (
  { studio, buckets, entries }: Awaited<ReturnType<typeof everything>>,
  member: MemberId,
) => {
  const [own = [], ...ofBuckets] = entries;
  expect(entries.flat().every(({ by }) => by === member)).toBe(true);
  expect(buckets.map(({ no }) => no)).toEqual(buckets.map((_, i) => i + 1));
  const bucketEntries = ofBuckets.map((stream) =>
    stream.map((entry) => ({ ...entry, event: readBucketEvent(JSON.stringify(entry.event)) })),
  );
  expect(buckets).toEqual(bucketEntries.map((stream, i) => foldBucket(streamNo(i + 1), stream)));
  const ownEntries = own.map((entry) => ({ ...entry, event: readStudioEvent(JSON.stringify(entry.event)) }));
  expect(studio).toEqual(foldStudio(ownEntries));
};

describe('whatever is logged, dropped, failed, taken back or back-dated', () => {
  it('states follow from the entries, in memory, after a restart, and by the check; no studio sees another’s', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(request, { minLength: 2, maxLength: 25 }), async (some) => {
        const file = await newLogbook();
        const store = await openStore(file, { clock });
        const other = onPostgres ? await openStore(file, { clock }) : undefined;
        const studios = await twoStudios(store);
        const members: [MemberId, MemberId] = [
          await store.people.memberOf(studios[0], 'd', '1', ''),
          await store.people.memberOf(studios[1], 'd', '1', ''),
        ];
        const requests = keyed(some);
        const half = requests.length / 2;
        for (const part of [requests.slice(0, half), requests.slice(half)]) {
          await run(other ? [store, other] : [store], studios, members, part);
          const [first, second] = await look(store.books, studios);
          if (other) expect(await look(other.books, studios)).toEqual([first, second]);
          if (first) expectToFollow(first, members[0]);
          if (second) expectToFollow(second, members[1]);
        }
        const before = await look(store.books, studios);
        await store.close();
        await other?.close();
        expect((await checkStates(file)).differing).toEqual([]);

        const again = await openStore(file, { clock });
        expect(await look(again.books, studios)).toEqual(before);
        for (const { studio, key, value } of requests.filter(({ ends }) => ends === 'kept')) {
          const repeat = () => Promise.reject(new Error('it ran again'));
          expect(await again.books.writeOnce(studios[studio], key, repeat)).toBe(value);
        }
        await again.close();
      }),
      { numRuns: onPostgres ? 15 : 60 },
    );
  });

  it('is the same alone as beside another studio', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(request, { minLength: 1, maxLength: 12 }), async (requests) => {
        const lookAlone = async (asked: Request[]) => {
          const store = await openStore(await newLogbook(), { clock });
          const studios = await twoStudios(store);
          await run([store], studios, [memberId('one'), memberId('other')], keyed(asked));
          const [first] = await look(store.books, studios);
          await store.close();
          return first;
        };
        const alone = requests.filter(({ studio }) => studio === 0);
        expect(await lookAlone(requests)).toEqual(await lookAlone(alone));
      }),
      { numRuns: onPostgres ? 4 : 25 },
    );
  });
});

describe('an event', () => {
  it('reads back as it was written', () => {
    fc.assert(
      fc.property(fc.oneof(setup, ordinary), (event) => {
        expect(readBucketEvent(writeEvent(streamNo(1), event))).toEqual(event);
      }),
    );
    fc.assert(
      fc.property(studioEvent, (event) => {
        expect(readStudioEvent(writeEvent(studioStream, event))).toEqual(event);
      }),
    );
  });
});
