import { expect, it } from 'vitest';
import { openGlazeRoom } from '../../helpers/room/glazeRoom.ts';

const vessel = (name: string, tare = '85.4g') => `/studio vessel name:"${name}" tare:${tare} water:100.2g`;
const cup = (name: string, kind = 'ford4') => `/studio cup name:"${name}" kind:${kind}`;

// By the table of confusables of Unicode Technical Standard 39: Cyrillic С, О and Т are drawn like Latin C, O and T.
it.each([
  ['weighing cup', vessel('COT cup'), vessel('СОТ cup'), 'vessels'],
  ['flow cup', cup('COT cup'), cup('СОТ cup'), 'cups'],
] as const)('a %s whose name looks just like another’s is asked about', async (_, first, second, kept) => {
  const room = await openGlazeRoom();
  expect((await room.keeper(1, first)).ok).toBe(true);
  const answer = await room.keeper(2, second);
  expect(answer.ok).toBe(false);
  expect(answer.title).toMatch(/looks just like/);
  const studio = await room.store.books.read(room.studio, (book) => book.studio());
  expect(studio[kept]).toHaveLength(1);
});

it('the very same name sets the cup anew', async () => {
  const room = await openGlazeRoom();
  await room.keeper(1, vessel('steel cup'));
  expect((await room.keeper(2, vessel('Steel Cup', '86g'))).ok).toBe(true);
  await room.keeper(3, cup('hall cup'));
  expect((await room.keeper(4, cup('hall cup', 'zahn2'))).ok).toBe(true);
});
