import type { Handbook, HandbookNote, Note, StudioNote } from '../studio/handbook.ts';
import { findEmergencies } from './findEmergencies.ts';
import { findNotes } from './findNotes.ts';
import { indexNotes, type NoteIndex } from './noteIndex.ts';
import { isChatter, isEveryday, termsOf } from './terms.ts';

/** Opens the handbook; its notes are read and indexed when the first question comes, a studio's own when its first does. */
export const openHandbook = (load: () => readonly HandbookNote[]): Handbook => {
  let notes: ReadonlyMap<string, HandbookNote> | undefined;
  const builtIn = () => (notes ??= new Map(load().map((note) => [note.id, note])));
  const withOwn = (own: readonly StudioNote[]): NoteIndex =>
    indexNotes([
      ...[...builtIn().values()].map((note): Note => ({ from: 'handbook', note })),
      ...own.map((note): Note => ({ from: 'studio', note })),
    ]);
  let shared: NoteIndex | undefined;
  const withoutOwn = () => (shared ??= withOwn([]));
  // A studio's list is another one once a note of it was changed, and then the index of the old list goes with it.
  const indexes = new WeakMap<readonly StudioNote[], NoteIndex>();
  const indexOf = (own: readonly StudioNote[]): NoteIndex => {
    if (own.length === 0) return withoutOwn();
    const known = indexes.get(own) ?? withOwn(own);
    indexes.set(own, known);
    return known;
  };
  const knows = (word: string): boolean =>
    isChatter(word) || termsOf(word).every((term) => withoutOwn().spread.has(term));
  return {
    note: (id) => builtIn().get(id),
    knows,
    emergencies: (question) =>
      findEmergencies(question, (word) => knows(word) || termsOf(word).every(isEveryday)),
    find: (question, own) => findNotes(indexOf(own), question),
  };
};
