import { describe, expect, it } from 'vitest';
import type { BucketState } from '../../../../src/studio/bucket/bucketState.ts';
import { bucketsNamed } from '../../../../src/studio/naming/bucketsNamed.ts';
import { openGlazeRoom } from '../../../helpers/room/glazeRoom.ts';
import { handbook } from '../../../helpers/handbook.ts';

let all: BucketState[] | undefined;
const buckets = async (): Promise<BucketState[]> => {
  const room = await openGlazeRoom();
  const names = ['Gull Grey', 'Whelk White', 'Sandbar', 'Gull Wing', 'Clear', 'Crème Brûlée'];
  for (const name of names) {
    const nick = name === 'Gull Grey' ? ' nick:gg' : name === 'Whelk White' ? ' nick:is' : '';
    await room.keeper(0, `/bucket add name:"${name}"${nick}`);
  }
  await room.keeper(1, '/bucket retire bucket:4');
  await room.keeper(2, '/bucket add name:"Gull Tern"');
  return room.store.books.read(room.studio, (book) => book.buckets());
};
const named = async (question: string) => {
  all ??= await buckets();
  const { buckets: found, ...rest } = bucketsNamed(question, all, (word) => handbook.knows(word));
  return { no: found.map(({ no }) => Number(no)), ...rest };
};

describe('a bucket in a question', () => {
  it.each([
    ['why is gg pinholing', [1]],
    ['why is Gull Grey, pinholing?', [1]],
    ['why is gull gray pinholing', [1]],
    ['is the gul grey ok', [1]],
    ['how much water does bucket 3 want', [3]],
    ['#2 smells', [2]],
    ['SANDBAR is thick', [3]],
    ['sandbr is thick', [3]],
    ['what is a sand bag', []],
    ['is whelk ready', [2]],
    ['creme brulee runs', [6]],
    ['is the Clear bucket ready', [5]],
  ])('%s', async (question, no) => {
    expect((await named(question)).no).toEqual(no);
  });

  it.each([
    // A nickname and a name that are also everyday words.
    'is my wax dry',
    'clear water on top',
    // Numbers that do not mean a bucket.
    'dip for 3 seconds',
    'is 2 mm too thick',
    '80 mesh',
    '',
    '???',
  ])('is not seen where none is named: %s', async (question) => {
    expect((await named(question)).no).toEqual([]);
  });

  it('is asked back, not guessed, when a beginning fits several', async () => {
    expect((await named('gull is thick')).no).toEqual([1, 7]);
    expect((await named('can i pour gg into sandbar')).no.toSorted()).toEqual([1, 3]);
  });

  it('leaves the question as it would be asked of any bucket', async () => {
    expect(await named('why is Whelk White crawling')).toMatchObject({
      rest: 'why is crawling',
      general: 'why is bucket crawling',
    });
  });
});
