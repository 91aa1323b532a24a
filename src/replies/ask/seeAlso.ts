import type { FoundNote, HandbookNote, Note } from '../../studio/handbook.ts';
import { noteId } from './noteParts.ts';

const most = 2;

/** How near to the best answer another must come to be worth a look. */
const near = 0.6;

/** Whether two notes share their subject: one names the other. What a studio wrote itself names nothing. */
const isKin = (a: Note, b: Note): boolean =>
  a.from === 'studio' ||
  b.from === 'studio' ||
  a.note.see.includes(noteId(b)) ||
  b.note.see.includes(noteId(a));

/** Other notes worth a look: the nearest of the same subject, then those that the note itself names. */
export const seeAlso = (
  best: FoundNote,
  others: readonly FoundNote[],
  note: (id: string) => HandbookNote | undefined,
): Note[] => {
  const named = (best.found.from === 'handbook' ? best.found.note.see : []).flatMap((id): Note[] => {
    const one = note(id);
    return one ? [{ from: 'handbook', note: one }] : [];
  });
  const kin = others
    .filter(({ found, score }) => score >= near * best.score && isKin(best.found, found))
    .map(({ found }) => found);
  const all = [...kin.slice(0, 1), ...named, ...kin.slice(1)].filter(
    (one) => noteId(one) !== noteId(best.found),
  );
  return [...new Map(all.map((one) => [noteId(one), one])).values()].slice(0, most);
};
