import {
  emergencies,
  type FoundNote,
  type Handbook,
  type HandbookNote,
  type Note,
  type StudioNote,
} from '../studio/handbook.ts';
import { asksOfWare, findEmergencies } from './findEmergencies.ts';
import { findNotes } from './findNotes.ts';
import { learnLikeness } from './likeness.ts';
import { findableNote, indexNotes, type NoteIndex } from './noteIndex.ts';
import { isStopWord, isEveryday, termsOf } from './terms.ts';

const firstAid: ReadonlySet<string> = new Set(emergencies);

/**
 * Opens the handbook. Its notes are read and indexed at the first question, and a studio's own notes at that studio's
 * first.
 */
export const openHandbook = (load: () => readonly HandbookNote[]): Handbook => {
  let notes: ReadonlyMap<string, HandbookNote> | undefined;
  const builtIn = () => (notes ??= new Map(load().map((note) => [note.id, note])));
  const handbookNotes = () => [...builtIn().values()].map((note): Note => ({ from: 'handbook', note }));
  let learnt: ReturnType<typeof learnLikeness> | undefined;
  const withOwn = (own: readonly StudioNote[]): NoteIndex => {
    const more = own.map((note): Note => ({ from: 'studio', note }));
    learnt ??= learnLikeness(handbookNotes().map(findableNote));
    return indexNotes([...handbookNotes(), ...more], learnt.withMore(more.map(findableNote)));
  };
  let shared: NoteIndex | undefined;
  const withoutOwn = () => (shared ??= withOwn([]));
  // Changing a note makes a new list, so the index of the old list can be collected.
  const indexes = new WeakMap<readonly StudioNote[], NoteIndex>();
  const indexOf = (own: readonly StudioNote[]): NoteIndex => {
    if (own.length === 0) return withoutOwn();
    const known = indexes.get(own) ?? withOwn(own);
    indexes.set(own, known);
    return known;
  };
  const knows = (word: string): boolean =>
    isStopWord(word) || termsOf(word).every((term) => withoutOwn().spread.has(term));
  const isKnown = (word: string): boolean => knows(word) || termsOf(word).every(isEveryday);
  const isNoFirstAid = ({ found }: FoundNote): boolean =>
    found.from === 'studio' || !firstAid.has(found.note.id);
  return {
    note: (id) => builtIn().get(id),
    knows,
    emergencies: (question) => findEmergencies(question, isKnown),
    find(question, own) {
      const found = findNotes(indexOf(own), question);
      if (!asksOfWare(question, isKnown)) return found;
      return { answers: found.answers.filter(isNoFirstAid), near: found.near.filter(isNoFirstAid) };
    },
  };
};
