import type { FoundNote, HandbookNote, Note } from '../../studio/handbook.ts';
import { noteId } from './noteParts.ts';

const most = 2;

/** How close to the best score another note must be to be offered. */
const near = 0.6;

/** Whether two notes are on the same subject: one names the other. A studio's own notes name no others. */
const isKin = (a: Note, b: Note): boolean =>
  a.from === 'studio' ||
  b.from === 'studio' ||
  a.note.see.includes(noteId(b)) ||
  b.note.see.includes(noteId(a));

/** Related notes: those with the nearest score on the same subject, then those that the note names. */
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
