import { writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { importExport } from '../../src/start/imports/importExport.ts';
import { checkStates } from '../../src/store/states/checkStates.ts';
import { openStore } from '../../src/store/openStore.ts';
import { seq } from '../../src/studio/ids.ts';
import type { WritableLogbook } from '../../src/studio/logbook/ports.ts';
import { exportText } from '../helpers/store/exportText.ts';
import { ordinary, setup, studioEvent, typed } from '../helpers/store/storeArbitraries.ts';
import { loggedAt } from '../helpers/store/storeEvents.ts';
import { settableClock, storeFile } from '../helpers/store/storeFile.ts';

const clock = settableClock();

const step = fc.record({
  which: fc.nat(3),
  minutes: fc.integer({ min: 0, max: 1200 }),
  note: typed,
  what: fc.oneof(
    { weight: 6, arbitrary: ordinary },
    { weight: 2, arbitrary: fc.record({ kind: fc.constant('undo' as const), of: fc.nat(20) }) },
  ),
});
const logbook = fc.record({
  members: fc.uniqueArray(typed, { minLength: 1, maxLength: 4 }),
  setups: fc.array(setup, { minLength: 1, maxLength: 3 }),
  studio: fc.array(studioEvent, { maxLength: 8 }),
  steps: fc.array(step, { maxLength: 25 }),
  notes: fc.array(fc.record({ title: typed, text: typed, words: typed }), { maxLength: 3 }),
});
type Logbook = typeof logbook extends fc.Arbitrary<infer T> ? T : never;

const fill = async (
  book: WritableLogbook,
  { setups, studio, steps, notes }: Logbook,
  by: (which: number) => Parameters<typeof loggedAt>[0],
) => {
  for (const { settings, volume } of setups)
    await book.open({ ...settings, ...(volume !== undefined && { volume }) }, loggedAt(by(0), 60));
  for (const event of studio) await book.logStudio(event, loggedAt(by(1), 0));
  for (const note of notes) await book.keepNote({ ...note, by: by(2), at: loggedAt(by(2), 5).at });
  for (const { which, minutes, note, what } of steps) {
    const all = await book.buckets();
    const bucket = all[which % all.length];
    if (!bucket) continue;
    if (what.kind !== 'undo') await book.log(bucket.no, what, loggedAt(by(which), minutes, note));
    else if (bucket.seq > 1)
      // Never the setup, without which there is no bucket.
      await book.log(
        bucket.no,
        { kind: 'undo', of: seq(2 + (what.of % (bucket.seq - 1))) },
        loggedAt(by(which), 6000),
      );
  }
};

it('whatever is in a logbook, its export comes back in with the same states and exports the same again', async () => {
  await fc.assert(
    fc.asyncProperty(logbook, async (some) => {
      const file = storeFile();
      const store = await openStore(file, { clock });
      try {
        const studio = await store.people.studioOf('discord', '1', 'before');
        const members: Parameters<typeof loggedAt>[0][] = [];
        for (const [i, name] of some.members.entries())
          members.push(await store.people.memberOf(studio, 'discord', String(i), name));
        const by = (which: number) => {
          const member = members[which % members.length];
          if (member === undefined) throw new Error('there is no member');
          return member;
        };
        await store.books.writeOnce(studio, 'fill', async (book) => {
          await fill(book, some, by);
          return { keep: true, value: 'filled' };
        });
        const text = await exportText(store, studio);
        writeFileSync(`${file}.json`, text);
        const { id } = await importExport(`${file}.json`, { store, clock }, { name: 'after', anew: false });
        expect(JSON.parse(await exportText(store, id))).toEqual(JSON.parse(text));
      } finally {
        await store.close();
      }
      expect(await checkStates(file)).toMatchObject({ studios: 2, differing: [] });
    }),
    { numRuns: 60 },
  );
});
