import { describe, expect, it } from 'vitest';
import { boardRows } from '../../../src/replies/bucket/boardRows.ts';
import { plainText } from '../../../src/contract/plainText.ts';
import { agoText } from '../../../src/words/text/agoText.ts';
import { en } from '../../../src/words/en.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';
import { openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const fact = ({ facts }: { facts: { label: string; text: string }[] }, label: string) =>
  facts.find((one) => one.label === label)?.text;

const board = async ({ store, studio }: GlazeRoom, minutes: number) => {
  const now = noonPlus(minutes);
  const rows = await store.books.read(studio, (book) => boardRows(book, { now, words: en }));
  return rows.map(({ stepName, needs }) => ({
    stepName,
    needs: plainText(needs, { now, zone: 'UTC' }),
  }));
};

it.each([
  [0.5, '30 min'],
  [1, '1 h'],
  // 72 min, rounded to ten minutes.
  [1.2, '1 h 10 min'],
  [2.98, '3 h'],
  [12.4, '12 h'],
  [31.6, '1 day'],
  [36, '2 days'],
  [7.2 * 24, '7 days'],
])('%s hours ago are %s ago', (hours, said) => {
  expect(agoText(hours)).toBe(`${said} ago`);
  expect(agoText(-hours)).toBe(`in ${said}`);
});

describe('a gravity from before something went in', () => {
  it('is called the last reading, beside what is predicted', async () => {
    const room = await openRoomWithGullGrey();
    const read = await room.say(1, '/reading bucket:gg gravity:1.49 within:0.02 seconds:14 stirred:yes');
    expect(fact(read, 'Gravity')).toMatch(/^1\.49 ± 0\.02/);
    const answer = await room.say(2, '/added bucket:gg what:water amount:1.2l');
    expect(fact(answer, 'Gravity')).toBeUndefined();
    expect(fact(answer, 'Last reading')).toBe('1.49 ± 0.02');
    // (15 × 1.49 + 1.2)/16.2 = 1.4537
    expect(fact(answer, 'Expected')).toMatch(/^1\.45 ± 0\.02/);
    const card = await room.say(2, '/bucket show bucket:gg');
    expect(fact(card, 'Last reading')).toBe('1.49 ± 0.02');
  });
});

describe('a bucket on hold', () => {
  it('says why in the first line, on the board, and to whoever pours water in', async () => {
    const room = await openRoomWithGullGrey();
    const held = await room.keeper(1, '/bucket hold bucket:gg why:"smells of rotten gum."');
    const line = "On hold: smells of rotten gum. Don't use it and don't change it.";
    expect(held.title).toBe(`Gull Grey: ${line}`);
    const poured = await room.say(2, '/added bucket:gg what:water amount:450ml');
    expect(poured.title).toBe(`Gull Grey: ${line}`);
    expect(poured.logged?.text).toBe('450 ml of water');
    expect((await board(room, 3)).map(({ needs }) => needs)).toEqual([line]);
  });
});

it('a list and the wall name what a bucket needs by the same words, to keepers and members alike', async () => {
  const room = await openRoomWithGullGrey();
  await room.say(1, '/reading bucket:gg gravity:1.38 seconds:14 stirred:yes');
  const [row] = await board(room, 2);
  expect(row?.stepName).toBe('too much water');
  for (const say of [room.say, room.keeper])
    expect((await say(2, '/bucket list')).facts[0]?.text).toMatch(/^too much water,/);
});

it('a list and a title round water the same way', async () => {
  const room = await openRoomWithGullGrey();
  const answer = await room.say(1, '/reading bucket:gg gravity:1.50 within:0.001 seconds:14 stirred:yes');
  // 2045 ml, rounded to what can be poured
  expect(answer.title).toMatch(/Add 2 l of water/);
  expect((await room.say(1, '/bucket list')).facts[0]?.text).toMatch(/^needs water \(2 l\)/);
});

it.each([
  '/batch plan recipe:"feldspar 44, silica 31" volume:15l gravity:3',
  '/batch plan recipe:"moon dust 44" volume:15l gravity:1.45',
  '/batch correct bucket:gg by:blend with:gg',
  '/dip time bucket:gg thickness:1mm',
])('a question that is refused is not said to have saved nothing: %s', async (line) => {
  const room = await openRoomWithGullGrey();
  const answer = await room.say(1, line);
  expect(answer.kind).toBe('refusal');
  expect(answer.title).not.toMatch(/saved/);
});

it('reminders are listed by the pieces, what of them, and when', async () => {
  const room = await openRoomWithGullGrey();
  await room.keeper(0, '/studio set zone:UTC');
  // Noon on 1 March: past 05:00 of the next day, and not before the studio opens at 08:00.
  await room.say(1, '/coat on kind:wax pieces:"3 bowls"');
  const { facts } = await room.say(2, '/remind list');
  expect(facts).toEqual([{ label: 'Mon 2 Mar 08:00', text: '3 bowls, wax emulsion: dry' }]);
});

it('a tile without a gravity is logged, and not said to be lost', async () => {
  const room = await openRoomWithGullGrey();
  const answer = await room.say(1, '/dip tile bucket:gg seconds:3 thickness:0.8mm');
  expect(answer.ok).toBe(true);
  expect([answer.title, ...answer.reasons].join(' ')).not.toMatch(/Nothing was saved/);
});
