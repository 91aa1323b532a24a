import { describe, expect, it } from 'vitest';
import { noonPlus } from '../../helpers/store/storeEvents.ts';
import { openTestStore, settableClock } from '../../helpers/store/storeFile.ts';

// RFC 9562, section 5.7: version 7 in the high bits of the seventh byte, variant 10 in those of the ninth.
const uuidv7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

describe('identities', () => {
  it('makes a studio and a member once, and finds them again after a restart', async () => {
    const store = await openTestStore();
    const studio = await store.people.studioOf('discord', '1', 'Wrackline Clay Co-op');
    const ana = await store.people.memberOf(studio, 'discord', '11', 'Ana');
    expect(studio).toMatch(uuidv7);
    expect(ana).toMatch(uuidv7);
    expect(await store.people.memberOf(studio, 'discord', '11', 'Ana B')).toBe(ana);
    await store.close();
    const again = await openTestStore({ file: store.file });
    expect(await again.people.studioOf('discord', '1', 'Another name')).toBe(studio);
    expect(await again.people.memberOf(studio, 'discord', '11', 'Ana')).toBe(ana);
    expect(await again.books.read(studio, (book) => book.members())).toEqual([{ id: ana, name: 'Ana' }]);
  });

  it('makes one of each when several ask at the same time', async () => {
    const { people, books } = await openTestStore();
    const studios = await Promise.all([1, 2, 3].map(() => people.studioOf('discord', '1', 'Wrackline')));
    expect(new Set(studios).size).toBe(1);
    const [studio] = studios;
    if (!studio) throw new Error('no studio');
    await Promise.all([1, 2, 3].map(() => people.memberOf(studio, 'discord', '11', 'Ana')));
    expect(await books.read(studio, (book) => book.members())).toHaveLength(1);
  });

  it('distinguishes platforms, studios and neighbouring 64-bit ids', async () => {
    const clock = settableClock();
    const { people } = await openTestStore({ clock });
    // As JavaScript numbers, these two are equal.
    const [low, high] = ['1099511627776000000', '1099511627776000001'];
    expect(Number(low)).toBe(Number(high));
    const one = await people.studioOf('discord', low, 'One');
    clock.set(noonPlus(1));
    const two = await people.studioOf('discord', high, 'Two');
    expect(await people.studios()).toEqual([
      { id: one, name: 'One' },
      { id: two, name: 'Two' },
    ]);
    const ids = [
      await people.memberOf(one, 'discord', low, 'Ana'),
      await people.memberOf(one, 'discord', high, 'Ana'),
      await people.memberOf(one, 'terminal', low, 'Ana'),
      await people.memberOf(two, 'discord', low, 'Ana'),
    ];
    expect(new Set([one, two, ...ids]).size).toBe(6);
  });

  it('keeps a name as it is typed, apart from NUL, until it is changed', async () => {
    const { people, books } = await openTestStore();
    const studio = await people.studioOf('discord', '1', 'Wrackline');
    const name = '  Ánà "𝔷" ’); drop table members; --\u0000\n🏺 ';
    const member = await people.memberOf(studio, 'discord', '11', name);
    const read = () => books.read(studio, (book) => book.member(member));
    expect((await read())?.name).toBe('  Ánà "𝔷" ’); drop table members; --\n🏺 ');
    await books.writeOnce(studio, 'rename', async (book) => {
      await book.rename(member, 'Ana\0');
      return { keep: true, value: null };
    });
    expect((await read())?.name).toBe('Ana');
    const elsewhere = await people.studioOf('discord', '2', 'Elsewhere');
    expect(await books.read(elsewhere, (book) => book.member(member))).toBeUndefined();
  });
});
