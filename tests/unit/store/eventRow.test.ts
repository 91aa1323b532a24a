import { describe, expect, it } from 'vitest';
import { gravity, millilitres } from '../../../src/glaze/units.ts';
import { seq, streamNo, studioStream } from '../../../src/studio/ids.ts';
import { readBucketEvent, readEvent, writeEvent } from '../../../src/store/entries/eventRow.ts';
import { probeEvents } from '../../helpers/store/probeEvents.ts';
import { gullGrey, loggedAt, stirredReading, water } from '../../helpers/store/storeEvents.ts';
import { openTestStore } from '../../helpers/store/storeFile.ts';

const bucket = streamNo(1);

describe('an event row', () => {
  it.each([Number.NaN, Number.POSITIVE_INFINITY])('is never written with %d in it', (value) => {
    expect(() => writeEvent(bucket, stirredReading(value))).toThrow();
    expect(() => writeEvent(bucket, water(value))).toThrow();
  });

  it('is read by the stream that it stands in', () => {
    expect(readEvent(studioStream, '{"kind":"water","hard":true}')).toEqual({ kind: 'water', hard: true });
    expect(() => readEvent(bucket, '{"kind":"water","hard":true}')).toThrow();
    expect(readEvent(bucket, '{"kind":"undo","of":3}')).toEqual({ kind: 'undo', of: seq(3) });
  });

  it.each([
    ['an unknown kind', '{"kind":"sung"}'],
    ['a field that no release has written', '{"kind":"release","why":"dry"}'],
    ['a missing field', '{"kind":"undo"}'],
    ['a number as text', '{"kind":"undo","of":"3"}'],
    ['nothing', 'null'],
  ])('with %s is refused, never guessed at', (_, json) => {
    expect(() => readBucketEvent(json)).toThrow();
  });
});

describe('text in the logbook', () => {
  it('is kept as it is typed, apart from NUL, in settings, notes and replies', async () => {
    const { people, books } = await openTestStore();
    const studio = await people.studioOf('discord', '1', 'Wrackline');
    const ana = await people.memberOf(studio, 'discord', '11', 'Ana');
    const typed = ' "Grå\u0000 måge" \\u0000 🏺\n</b> @everyone \' ';
    const kept = ' "Grå måge" \\u0000 🏺\n</b> @everyone \' ';
    const open = () =>
      books.writeOnce(studio, 'open\0', async (book) => {
        const { entry, state } = await book.open({ ...gullGrey, name: typed }, loggedAt(ana, 0, typed));
        expect(state.settings.name).toBe(kept);
        return { keep: true, value: { said: typed, id: entry.id } };
      });
    expect(await open()).toEqual({ said: kept, id: '1-1' });
    expect(await open()).toEqual({ said: kept, id: '1-1' });
    const entries = await books.read(studio, (book) => book.entries(bucket, { most: 9 }));
    expect(entries).toHaveLength(1);
    expect(entries[0]).toMatchObject({ note: kept, event: { settings: { name: kept } } });
  });
});

describe('the fold’s fingerprint', () => {
  it('covers every kind of entry and of addition', () => {
    const kinds = new Set(probeEvents.map(({ kind }) => kind));
    const added = new Set(
      probeEvents.map((event) => (event.kind === 'addition' ? event.added.what : undefined)),
    );
    // Each record must name every member of its union, or it does not compile.
    const everyKind: Record<(typeof probeEvents)[number]['kind'], true> = {
      setup: true,
      change: true,
      reading: true,
      addition: true,
      stir: true,
      sieve: true,
      tile: true,
      hold: true,
      release: true,
      retire: true,
      learned: true,
      undo: true,
    };
    const everyAddition: Record<
      Extract<(typeof probeEvents)[number], { kind: 'addition' }>['added']['what'],
      true
    > = {
      water: true,
      'draw-off': true,
      dry: true,
      flocculant: true,
      deflocculant: true,
      glaze: true,
      taken: true,
      other: true,
    };
    expect([...kinds].sort()).toEqual(Object.keys(everyKind).sort());
    expect([...added].filter((what) => what !== undefined).sort()).toEqual(Object.keys(everyAddition).sort());
  });
});

describe('an entry', () => {
  it('is accepted at every time that can be stored', async () => {
    const { people, books } = await openTestStore();
    const studio = await people.studioOf('discord', '1', 'Wrackline');
    const ana = await people.memberOf(studio, 'discord', '11', 'Ana');
    const logged = { ...loggedAt(ana, 0), at: loggedAt(ana, Number.NaN).at };
    const opening = books.writeOnce(studio, 'open', async (book) => {
      await book.open({ ...gullGrey, solids: gravity(2.6), pail: millilitres(19_000) }, logged);
      return { keep: true, value: 1 };
    });
    await expect(opening).rejects.toThrow('no time that can be stored');
    expect(await books.read(studio, (book) => book.buckets())).toEqual([]);
  });

  it('is found by its id within its own studio only', async () => {
    const { people, books } = await openTestStore();
    const studio = await people.studioOf('discord', '1', 'Wrackline');
    const elsewhere = await people.studioOf('discord', '2', 'Elsewhere');
    const ana = await people.memberOf(studio, 'discord', '11', 'Ana');
    const id = await books.writeOnce(studio, 'open', async (book) => {
      const { entry } = await book.open(gullGrey, loggedAt(ana, 0, 'new'));
      return { keep: true, value: entry.id };
    });
    expect(await books.read(studio, (book) => book.entry(id))).toMatchObject({ id, note: 'new', by: ana });
    expect(await books.read(elsewhere, (book) => book.entry(id))).toBeUndefined();
    expect(await books.read(studio, (book) => book.entry('1-2' as typeof id))).toBeUndefined();
    expect(await books.read(studio, (book) => book.entry('rubbish' as typeof id))).toBeUndefined();
  });
});
