import { describe, expect, it } from 'vitest';
import { days, hours, later } from '../../../src/studio/ids.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';
import { sqlIn } from '../../helpers/store/sqlIn.ts';
import { openTestStore, settableClock } from '../../helpers/store/storeFile.ts';

describe('a held line', () => {
  it('is there until it expires, under an id that fits in a button', async () => {
    const { people, heldLines } = await openTestStore();
    const studio = await people.studioOf('discord', '1', 'Wrackline');
    const line = `/added bucket:"Gull Grey" what:water amount:450ml note:"${'long '.repeat(50)}"`;
    const id = heldLines.hold(studio, line, noonPlus(60));
    expect(id).toMatch(/^[\w-]{16}$/);
    expect(await heldLines.held(id, noonPlus(59))).toEqual({ studio, line });
    expect(await heldLines.held(id, noonPlus(60))).toBeUndefined();
    expect(await heldLines.held('unknown', noonPlus(0))).toBeUndefined();
  });
});

describe('a line that is not yet written', () => {
  const waiting = (file: string) => sqlIn(file, 'select line from held_lines order by line');
  const opened = async () => {
    const store = await openTestStore();
    return { store, studio: await store.people.studioOf('discord', '1', 'Wrackline') };
  };

  it('is there at once, and written with others within moments', async () => {
    const { store, studio } = await opened();
    const ids = ['/one', '/two'].map((line) => store.heldLines.hold(studio, line, noonPlus(60)));
    expect(await store.heldLines.held(ids[0] ?? '', noonPlus(0))).toEqual({ studio, line: '/one' });
    await expect.poll(() => waiting(store.file)).toEqual([{ line: '/one' }, { line: '/two' }]);
    expect(await store.heldLines.held(ids[1] ?? '', noonPlus(0))).toEqual({ studio, line: '/two' });
  });

  it('is written when the program stops', async () => {
    const { store, studio } = await opened();
    store.heldLines.hold(studio, '/one', noonPlus(60));
    await store.close();
    expect(await waiting(store.file)).toEqual([{ line: '/one' }]);
  });

  it('loses a forgotten member’s words like any other', async () => {
    const { store, studio } = await opened();
    const ana = await store.people.memberOf(studio, 'discord', '11', 'Ana');
    store.heldLines.hold(studio, '/added bucket:1 note:"for Ana"', noonPlus(60));
    store.heldLines.hold(studio, '/stirred bucket:1', noonPlus(60));
    await store.books.writeOnce(studio, 'forget', async (book) => {
      await book.forget(ana);
      return { keep: true, value: null };
    });
    await store.erased();
    expect(await waiting(store.file)).toEqual([{ line: '/stirred bucket:1' }]);
  });
});

describe('a stored setting', () => {
  it('is what it was last set to', async () => {
    const { kept } = await openTestStore();
    expect(await kept.get('commands')).toBeUndefined();
    await kept.set('commands', 'a1');
    await kept.set('commands', 'b2');
    expect(await kept.get('commands')).toBe('b2');
  });
});

describe('what has expired', () => {
  it('is dropped at the next start: replies a week old, lines past their time; younger ones stay', async () => {
    const clock = settableClock();
    const store = await openTestStore({ clock });
    const studio = await store.people.studioOf('discord', '1', 'Wrackline');
    const answer = (key: string) =>
      store.books.writeOnce(studio, key, async () => ({ keep: true, value: key }));
    await Promise.all(Array.from({ length: 1200 }, (_, i) => answer(`old ${i}`)));
    clock.set(later(noonPlus(0), days(6)));
    await answer('young');
    store.heldLines.hold(studio, 'old', later(clock.now(), hours(1)));
    store.heldLines.hold(studio, 'young', later(clock.now(), days(3)));
    await store.close();

    clock.set(later(noonPlus(0), days(8)));
    const again = await openTestStore({ clock, file: store.file });
    // Expired lines are deleted a few at a time, so that nobody waits; the rest go in later transactions.
    for (let turns = 0; turns < 40; turns += 1) await again.kept.get('anything');
    await again.close();
    expect(await sqlIn(store.file, 'select key from replies')).toEqual([{ key: 'young' }]);
    expect(await sqlIn(store.file, 'select line from held_lines')).toEqual([{ line: 'young' }]);
  });
});
