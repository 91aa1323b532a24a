import { expect, it } from 'vitest';
import { openHandbook } from '../../../src/search/openHandbook.ts';
import { loadNotes } from '../../../src/seed/loadNotes.ts';
import { warmUp } from '../../../src/start/warmUp.ts';

const logged: object[] = [];
const note = (about: object) => void logged.push(about);
const log = { info: note, warn: note, error: note };

it('the notes are read before anybody asks, and once', async () => {
  let read = 0;
  const handbook = openHandbook(() => {
    read += 1;
    return loadNotes();
  });
  await warmUp({ handbook }, log);
  expect(read).toBe(1);
  expect(handbook.find('why does a glaze crawl?', []).answers.length).toBeGreaterThan(0);
  expect(read).toBe(1);
  expect(logged).toEqual([]);
});

it('a question that comes while the notes are being read is answered as any other', () => {
  const begun = openHandbook(loadNotes);
  for (let step = 0; step < 5; step += 1) expect(begun.prepare()).toBe(true);
  const question = 'why does a glaze crawl?';
  expect(begun.find(question, [])).toEqual(openHandbook(loadNotes).find(question, []));
  expect(begun.prepare()).toBe(false);
});

it('notes that cannot be read keep nothing from starting', async () => {
  const handbook = openHandbook(() => {
    throw new Error('damaged');
  });
  await warmUp({ handbook }, log);
  expect(logged).toEqual([{ err: new Error('damaged') }]);
});
