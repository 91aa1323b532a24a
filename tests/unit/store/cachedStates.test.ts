import Sqlite from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import { streamNo } from '../../../src/studio/ids.ts';
import { gullGrey, loggedAt, stirredReading, water } from '../../helpers/store/storeEvents.ts';
import { openTestStore } from '../../helpers/store/storeFile.ts';

const bucket = streamNo(1);

/** A studio of one bucket, its cached state changed in the closed file by an SQL expression. */
const afterChange = async (state: string) => {
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
  const other = new Sqlite(file);
  expect(other.prepare(`update streams set state = ${state} where stream_no = 1`).run().changes).toBe(1);
  other.close();
  const checked = await checkStates(file);
  const again = await openTestStore({ file });
  const after = await again.books.read(studio, (book) => book.bucket(bucket));
  return { again, studio, ana, before, after, checked };
};

const corrupted: [string, string][] = [
  ['a number is text', `json_set(state, '$.carried', 'much')`],
  ['an instant is text', `json_set(state, '$.believed.at', '2026-03-01T12:00:00Z')`],
  ['a field is missing', `json_remove(state, '$.flocculant.doses')`],
  ['a field is one that nobody knows', `json_set(state, '$.mood', 'blue')`],
  ['a setting is none of its choices', `json_set(state, '$.settings.use', 'glazing')`],
  ['no number was stored, as null', `json_set(state, '$.moved', null)`],
  ['the text is cut', 'substr(state, 1, length(state) / 2)'],
  ['the text is empty', `''`],
  ['it is another thing', `'[1]'`],
  ['it is nothing', `'null'`],
];

describe('a cached state', () => {
  it.each(corrupted)('is folded anew from the entries when %s', async (_, state) => {
    const { before, after, checked } = await afterChange(state);
    expect(after).toEqual(before);
    expect(checked.differing).toMatchObject([{ stream: 1 }]);
  });

  it('that was folded anew is stored with the next entry', async () => {
    const { again, studio, ana } = await afterChange(`'{'`);
    await again.books.writeOnce(studio, 'next', async (book) => {
      await book.log(bucket, water(100), loggedAt(ana, 30));
      return { keep: true, value: 'logged' };
    });
    expect((await checkStates(again.file)).differing).toEqual([]);
  });

  it('that fits is used as it is stored, its keys in their order', async () => {
    const { before, after } = await afterChange(
      `json_patch(json_object('carried', 0.25), json_remove(state, '$.carried'))`,
    );
    expect(after).toEqual({ ...before, carried: 0.25 });
    expect(Object.keys(after ?? {})[0]).toBe('carried');
  });
});
