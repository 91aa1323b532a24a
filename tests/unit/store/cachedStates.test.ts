import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import { streamNo } from '../../../src/studio/ids.ts';
import { gullGrey, loggedAt, stirredReading, water } from '../../helpers/store/storeEvents.ts';
import { sqlIn } from '../../helpers/store/sqlIn.ts';
import { openTestStore } from '../../helpers/store/storeFile.ts';

const bucket = streamNo(1);

const part = z.record(z.string(), z.unknown());
const stored = z.looseObject({ believed: part, flocculant: part, settings: part });
type Stored = z.infer<typeof stored>;
const rows = z.array(z.object({ state: z.string() }));

/** A studio of one bucket, its cached state changed while nobody has it open. */
const afterChange = async (changed: (state: Stored, text: string) => unknown) => {
  const store = await openTestStore();
  const { books, people, file } = store;
  const studio = await people.studioOf('discord', '1', 'Wrackline Clay Co-op');
  const ana = await people.memberOf(studio, 'discord', '11', 'Ana');
  await books.writeOnce(studio, 'fill', async (book) => {
    await book.open(gullGrey, loggedAt(ana, 0));
    await book.log(bucket, stirredReading(1.44), loggedAt(ana, 10));
    await book.log(bucket, water(450), loggedAt(ana, 20));
    return { keep: true, value: 'filled' };
  });
  const before = await books.read(studio, (book) => book.bucket(bucket));
  await store.close();
  const [row] = rows.parse(await sqlIn(file, 'select state from streams where stream_no = 1'));
  const text = row?.state ?? '';
  const written = changed(stored.parse(JSON.parse(text)), text);
  const fresh = typeof written === 'string' ? written : JSON.stringify(written);
  await sqlIn(file, 'update streams set state = ? where stream_no = 1', fresh);
  const checked = await checkStates(file);
  const again = await openTestStore({ file });
  const after = await again.books.read(studio, (book) => book.bucket(bucket));
  return { again, studio, ana, before, after, checked };
};

const corrupted: [string, Parameters<typeof afterChange>[0]][] = [
  ['a number is text', (state) => ({ ...state, carried: 'much' })],
  [
    'an instant is text',
    (state) => ({ ...state, believed: { ...state.believed, at: '2026-03-01T12:00:00Z' } }),
  ],
  ['a field is missing', (state) => ({ ...state, flocculant: { ...state.flocculant, doses: undefined } })],
  ['a field is one that nobody knows', (state) => ({ ...state, mood: 'blue' })],
  [
    'a setting is none of its choices',
    (state) => ({ ...state, settings: { ...state.settings, use: 'glazing' } }),
  ],
  ['no number was stored, as null', (state) => ({ ...state, moved: null })],
  ['the text is cut', (_, text) => text.slice(0, text.length / 2)],
  ['the text is empty', () => ''],
  ['it is another thing', () => '[1]'],
  ['it is nothing', () => 'null'],
];

describe('a cached state', () => {
  it.each(corrupted)('is folded anew from the entries when %s', async (_, state) => {
    const { before, after, checked } = await afterChange(state);
    expect(after).toEqual(before);
    expect(checked.differing).toMatchObject([{ stream: 1 }]);
  });

  it('that was folded anew is stored with the next entry', async () => {
    const { again, studio, ana } = await afterChange(() => '{');
    await again.books.writeOnce(studio, 'next', async (book) => {
      await book.log(bucket, water(100), loggedAt(ana, 30));
      return { keep: true, value: 'logged' };
    });
    expect((await checkStates(again.file)).differing).toEqual([]);
  });

  it('that fits is used as it is stored, its keys in their order', async () => {
    const { before, after } = await afterChange(({ carried: _, ...state }) => ({
      carried: 0.25,
      ...state,
    }));
    expect(after).toEqual({ ...before, carried: 0.25 });
    expect(Object.keys(after ?? {})[0]).toBe('carried');
  });
});
