import { openHandbook } from '../../../src/search/openHandbook.ts';
import { loadNotes } from '../../../src/seed/loadNotes.ts';

/** Of each note's phrases every tenth is left out in turn. */
const folds = 10;

/**
 * How often a note is found by a phrase that was left out of it: first, and among the first three. A phrase is shorter
 * than a question, and often the only one with its word, so the shares are lower than those of questions.
 */
export const foundByPhrasesLeftOut = (turns: readonly number[]) => {
  const notes = loadNotes();
  const hits = { first: 0, three: 0, asked: 0 };
  for (const turn of turns) {
    const isLeftOut = (place: number) => place % folds === turn;
    const handbook = openHandbook(() =>
      notes.map((note) => ({ ...note, words: note.words.filter((_, place) => !isLeftOut(place)) })),
    );
    for (const { id, words } of notes)
      for (const phrase of words.filter((_, place) => isLeftOut(place))) {
        const ids = handbook
          .find(phrase, [])
          .near.slice(0, 3)
          .map(({ found }) => (found.from === 'handbook' ? found.note.id : ''));
        hits.asked++;
        if (ids[0] === id) hits.first++;
        if (ids.includes(id)) hits.three++;
      }
  }
  return { asked: hits.asked, first: hits.first / hits.asked, three: hits.three / hits.asked };
};
