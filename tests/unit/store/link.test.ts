import { describe, expect, it } from 'vitest';
import { openDesk } from '../../../src/desk/dispatch.ts';
import { speak } from '../../../src/desk/speak.ts';
import type { Request } from '../../../src/contract/desk.ts';
import { commands } from '../../../src/start/registry.ts';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import { streamNo, type MemberId } from '../../../src/studio/ids.ts';
import type { PeopleChange } from '../../../src/studio/logbook/ports.ts';
import { en } from '../../../src/words/en.ts';
import { isStored } from '../../helpers/store/isStored.ts';
import { gullGreyLine } from '../../helpers/room/glazeRoom.ts';
import { handbook } from '../../helpers/handbook.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';
import { openTestStore, settableClock } from '../../helpers/store/storeFile.ts';

/** A studio that is used from two platforms. */
const twoPlatforms = async () => {
  const clock = settableClock();
  const store = await openTestStore({ clock });
  const report = (error: unknown) => {
    throw error;
  };
  const desk = openDesk({ commands, books: store.books, words: en, handbook, report });
  const studio = await store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
  let keys = 0;
  const as = (platform: 'discord' | 'room', name: string) =>
    store.people.memberOf(studio, platform, `${platform}-${name}`, name);
  const by = async (member: MemberId, minutes: number, line: string, more: Partial<Request> = {}) =>
    speak(
      line,
      more.key ?? `test:${++keys}`,
      { studio, member, role: 'member', now: noonPlus(minutes), ...more },
      { desk, words: en },
    );
  const warden = await as('discord', 'Warden');
  await by(warden, 0, gullGreyLine(), { role: 'keeper' });
  const codeOf = async (member: MemberId, minutes: number) => {
    const { data, kind } = await by(member, minutes, '/link');
    expect(kind).toBe('answer');
    return String(data['code']);
  };
  const keepers = () => store.books.read(studio, async (book) => (await book.studio()).keepers);
  return { store, clock, studio, as, by, codeOf, warden, keepers };
};

describe('linking one person on two platforms', () => {
  it('gives a code that is short, shown once and kept as a hash only', async () => {
    const { store, as, by, codeOf } = await twoPlatforms();
    const wren = await as('discord', 'Wren');
    const code = await codeOf(wren, 1);
    expect(code).toMatch(/^[2-9a-hjkmnp-z]{4}-[2-9a-hjkmnp-z]{4}$/);
    const again = await by(wren, 1, '/link', { key: 'same' });
    const repeat = await by(wren, 1, '/link', { key: 'same' });
    expect(again.data['code']).not.toBe(code);
    expect(repeat.data).toEqual({});
    await store.close();
    for (const one of [code, String(again.data['code'])])
      for (const written of [one, one.replace('-', '')])
        expect(await isStored(store.file, written)).toBe(false);
  });

  it('makes both sides one: undo, coats, reminders and names', async () => {
    const { store, studio, as, by, codeOf } = await twoPlatforms();
    const [discord, room] = [await as('discord', 'Wren'), await as('room', 'Wrennie')];
    await by(room, 1, '/stirred bucket:gg minutes:3');
    await by(room, 1, '/coat on kind:wax pieces:"3 bowls"');
    await by(discord, 1, '/coat on kind:wax pieces:"2 jugs"');
    const changes: PeopleChange['kind'][] = [];
    store.followPeople(({ kind }) => changes.push(kind));
    const linked = await by(
      room,
      2,
      `/link code:${(await codeOf(discord, 2)).toUpperCase().replace('-', ' ')}`,
    );
    expect(linked).toMatchObject({ kind: 'answer', private: true, data: { linked: true, name: 'Wren' } });
    expect(changes).toEqual(['joined']);
    expect(await as('room', 'Wrennie')).toBe(discord);
    for (const member of [discord, room]) {
      expect((await by(member, 3, '/coat list')).data['coats']).toHaveLength(2);
      expect((await by(member, 3, '/remind list')).data['reminders']).toHaveLength(2);
    }
    const log = await by(discord, 3, '/bucket log bucket:gg');
    expect(log.data['entries']).toMatchObject([{ by: 'Wren', kind: 'stir' }, { by: 'Warden' }]);
    expect((await by(discord, 4, '/undo entry:1-2')).kind).toBe('answer');
    const names = (await store.books.read(studio, (book) => book.members())).map(({ name }) => name);
    expect(names.sort()).toEqual(['Warden', 'Wren']);
    expect(await checkStates(store.file)).toMatchObject({ outdated: 0, differing: [] });
    await store.rebuildStates();
    expect((await by(discord, 5, '/coat list')).data['coats']).toHaveLength(2);
  });

  it('holds after a restart, from entries that nobody changed', async () => {
    const { store, studio, as, by, codeOf } = await twoPlatforms();
    const [discord, room] = [await as('discord', 'Wren'), await as('room', 'Wrennie')];
    await by(room, 1, '/bucket hold bucket:gg why:frozen', { role: 'keeper' });
    await by(room, 2, `/link code:${await codeOf(discord, 2)}`);
    expect((await by(discord, 3, '/bucket show bucket:gg')).kind).toBe('answer');
    await store.close();
    const again = await openTestStore({ file: store.file });
    const [bucket] = await again.books.read(studio, (book) => book.buckets());
    expect(bucket?.hold?.by).toBe(discord);
    expect(await checkStates(store.file)).toMatchObject({ differing: [] });
  });

  it('tells also who found what nobody logged', async () => {
    const { store, studio, as, by, codeOf } = await twoPlatforms();
    const [discord, room] = [await as('discord', 'Wren'), await as('room', 'Wrennie')];
    const read = (minutes: number, gravity: number) =>
      by(room, minutes, `/reading bucket:gg gravity:${gravity} within:0.005 seconds:14 stirred:yes`);
    await read(1, 1.44);
    await read(2 * 1440, 1.4);
    await read(2 * 1440 + 3, 1.4);
    await by(room, 2 * 1440 + 4, `/link code:${await codeOf(discord, 2 * 1440 + 4)}`);
    const [bucket] = await store.books.read(studio, (book) => book.buckets());
    expect(bucket?.unlogged?.map(({ found }) => found.by)).toEqual([discord]);
    expect(await checkStates(store.file)).toMatchObject({ outdated: 0, differing: [] });
  });

  it.each([
    ['the one who made the code', 0],
    ['the one who types it', 1],
  ])('keeps a keeper a keeper, be it %s', async (_, which) => {
    const { as, by, codeOf, warden, keepers } = await twoPlatforms();
    const sides = [await as('discord', 'Wren'), await as('room', 'Wrennie')] as const;
    await by(warden, 1, `/studio keeper member:${which === 0 ? 'Wren' : 'Wrennie'}`, { role: 'keeper' });
    // A keeper on the other platform once, but no longer.
    await by(warden, 1, `/studio keeper member:${which === 0 ? 'Wrennie' : 'Wren'}`, { role: 'keeper' });
    await by(warden, 1, `/studio keeper member:${which === 0 ? 'Wrennie' : 'Wren'} is:member`, {
      role: 'keeper',
    });
    expect(await keepers()).toEqual([sides[which === 0 ? 0 : 1]]);
    const line = `/link code:${await codeOf(sides[0], 2)}`;
    if (which === 1) {
      // A member who would pass on a keeper's rights is asked first, without using the code up.
      const doubt = await by(sides[1], 2, line);
      expect(doubt).toMatchObject({ kind: 'refusal', data: { why: 'unsure' } });
      expect(await keepers()).toEqual([sides[1]]);
    }
    await by(sides[1], 2, `${line} sure:yes`);
    expect(await keepers()).toEqual([sides[0]]);
  });

  it('joins a third side to two, and forgets all three together', async () => {
    const { store, studio, as, by, codeOf } = await twoPlatforms();
    const [first, second] = [await as('discord', 'Tern'), await as('room', 'Terna')];
    const third = await store.people.memberOf(studio, 'terminal', 'Ternissima', 'Ternissima');
    for (const one of [first, second, third]) await by(one, 1, '/stirred bucket:gg note:"a theorbo"');
    await by(second, 2, `/link code:${await codeOf(first, 2)}`);
    await by(first, 3, `/link code:${await codeOf(third, 3)}`);
    const log = await by(third, 4, '/bucket log bucket:gg');
    expect(log.data['entries']).toMatchObject([
      { by: 'Ternissima' },
      { by: 'Ternissima' },
      { by: 'Ternissima' },
      { by: 'Warden' },
    ]);
    expect((await by(second, 4, '/forget-me sure:yes')).kind).toBe('answer');
    await store.erased();
    for (const word of ['Tern', 'Terna', 'theorbo'])
      expect(await isStored(store.file, word), word).toBe(false);
  });

  it('takes a code once, for a quarter of an hour, and not from its own side', async () => {
    const { as, by, codeOf } = await twoPlatforms();
    const [wren, knot, skua] = [
      await as('discord', 'Wren'),
      await as('room', 'Knot'),
      await as('room', 'Skua'),
    ];
    const code = await codeOf(wren, 1);
    expect((await by(wren, 1, `/link code:${code}`)).data).toEqual({ why: 'own-code' });
    expect((await by(knot, 16, `/link code:${code}`)).data).toEqual({ why: 'no-such-code' });
    const fresh = await codeOf(wren, 16);
    expect((await by(knot, 17, `/link code:${fresh}`)).kind).toBe('answer');
    expect((await by(skua, 17, `/link code:${fresh}`)).data).toEqual({ why: 'no-such-code' });
    expect((await by(skua, 17, `/link code:${code}`)).data).toEqual({ why: 'no-such-code' });
  });

  it('gives one code to one of two who type it at the same moment', async () => {
    const { as, by, codeOf } = await twoPlatforms();
    const [wren, knot, skua] = [
      await as('discord', 'Wren'),
      await as('room', 'Knot'),
      await as('room', 'Skua'),
    ];
    const code = await codeOf(wren, 1);
    const both = await Promise.all([knot, skua].map((one) => by(one, 1, `/link code:${code}`)));
    expect(both.map(({ kind }) => kind).sort()).toEqual(['answer', 'refusal']);
  });

  it('is not guessed in a thousand tries, nor does that keep anybody else out', async () => {
    const { as, by, codeOf } = await twoPlatforms();
    const [wren, thief, knot] = [
      await as('discord', 'Wren'),
      await as('room', 'Thief'),
      await as('room', 'Knot'),
    ];
    const code = await codeOf(wren, 1);
    const why = new Map<unknown, number>();
    for (let n = 0; n < 1_000; n += 1) {
      const guess = n.toString(8).replaceAll('0', '8').replaceAll('1', '9').padStart(8, '2');
      const { kind, data } = await by(thief, 1, `/link code:${guess}`);
      expect(kind).toBe('refusal');
      why.set(data['why'], (why.get(data['why']) ?? 0) + 1);
    }
    expect(Object.fromEntries(why)).toEqual({ 'no-such-code': 5, 'too-many': 995 });
    // By then even the right code is not accepted from them.
    expect((await by(thief, 2, `/link code:${code}`)).data).toEqual({ why: 'too-many' });
    expect((await by(knot, 2, `/link code:${code}`)).kind).toBe('answer');
  });

  it('is not for the demo, where anybody can be anybody', async () => {
    const { as, by, codeOf } = await twoPlatforms();
    const [wren, knot] = [await as('discord', 'Wren'), await as('room', 'Knot')];
    expect((await by(wren, 1, '/link', { guest: true })).kind).toBe('refusal');
    const code = await codeOf(wren, 1);
    expect((await by(knot, 1, `/link code:${code}`, { guest: true })).kind).toBe('refusal');
    expect(await as('room', 'Knot')).toBe(knot);
  });

  it('ends the code of whoever is forgotten', async () => {
    const { as, by, codeOf, store, studio } = await twoPlatforms();
    const [wren, knot] = [await as('discord', 'Wren'), await as('room', 'Knot')];
    const code = await codeOf(wren, 1);
    await by(wren, 2, '/forget-me sure:yes');
    expect((await by(knot, 2, `/link code:${code}`)).data).toEqual({ why: 'no-such-code' });
    expect((await store.books.read(studio, (book) => book.entries(streamNo(1), { most: 9 }))).length).toBe(1);
  });
});
