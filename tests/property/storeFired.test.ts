import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkStates } from '../../src/store/states/checkStates.ts';
import { readEvent, writeEvent } from '../../src/store/entries/eventRow.ts';
import { bisques } from '../../src/studio/piece/bisque.ts';
import { faults, type FiredEvent, type FiredSaid } from '../../src/studio/firing/firedEvent.ts';
import { firedStream, instant, seq, streamNo } from '../../src/studio/ids.ts';
import { typed } from '../helpers/store/storeArbitraries.ts';
import { gullGrey, loggedAt, noonPlus } from '../helpers/store/storeEvents.ts';
import { openTestStore } from '../helpers/store/storeFile.ts';

const moment = fc.integer({ min: 0, max: 4e12 }).map(instant);
const place = fc.integer({ min: 1, max: 99_999 }).map(seq);
const bucket = fc.integer({ min: 1, max: 60 }).map(streamNo);
const count = fc.integer({ min: 1, max: 500 });

const said: fc.Arbitrary<FiredSaid> = fc.record(
  {
    bucket,
    over: bucket,
    faults: fc.uniqueArray(fc.constantFrom(...faults)),
    pieces: count,
    faulty: count,
    dipped: fc.record({ from: moment, to: moment }),
    plan: place,
    coat: place,
    body: typed,
    cone: fc.integer({ min: -22, max: 42 }),
    kiln: typed,
    bisque: fc.constantFrom(...bisques),
    bisqueCone: fc.integer({ min: -22, max: 42 }),
  },
  { requiredKeys: ['bucket', 'faults'] },
);
const event: fc.Arbitrary<FiredEvent> = fc.oneof(
  said.map((fired) => ({ kind: 'fired' as const, fired })),
  place.map((of) => ({ kind: 'undo' as const, of })),
);

describe('a result from the kiln in the file', () => {
  it('is read as it was written', () => {
    fc.assert(
      fc.property(event, (one) => {
        expect(readEvent(firedStream, writeEvent(firedStream, one))).toEqual(one);
      }),
    );
  });

  it.each([
    ['a fault that is none', '{"kind":"fired","fired":{"bucket":1,"faults":["sparkling"]}}'],
    ['no bucket', '{"kind":"fired","fired":{"faults":[]}}'],
    [
      'a field that no release has written',
      '{"kind":"fired","fired":{"bucket":1,"faults":[],"moon":"full"}}',
    ],
  ])('with %s is refused', (_, json) => {
    expect(() => readEvent(firedStream, json)).toThrow();
  });

  it('stands after a new start, but for what was taken back, and its stream adds up', async () => {
    const store = await openTestStore();
    const studio = await store.people.studioOf('discord', '1', 'Wrackline');
    const ana = await store.people.memberOf(studio, 'discord', '11', 'Ana');
    const fired = (pieces: number): FiredEvent => ({
      kind: 'fired',
      fired: {
        bucket: streamNo(1),
        faults: ['crawling'],
        pieces,
        dipped: { from: noonPlus(-9), to: noonPlus(0) },
      },
    });
    await store.books.writeOnce(studio, 'fill', async (book) => {
      await book.open(gullGrey, loggedAt(ana, 0));
      for (const pieces of [1, 2, 3]) await book.logFired(fired(pieces), loggedAt(ana, pieces));
      await book.logFired({ kind: 'undo', of: seq(2) }, loggedAt(ana, 4));
      return { keep: true, value: 'filled' };
    });
    await store.close();
    expect(await checkStates(store.file)).toMatchObject({ streams: 2, differing: [] });
    const again = await openTestStore({ file: store.file });
    expect(await again.rebuildStates()).toBe(2);
    const stands = await again.books.read(studio, (book) => book.fired());
    expect(stands.map(({ id, said: { pieces } }) => [id, pieces])).toEqual([
      ['f-1', 1],
      ['f-3', 3],
    ]);
  });
});
