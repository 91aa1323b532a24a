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
import { learnLikeness, type Likeness } from './likeness.ts';
import { findableNote, indexNotes, type NoteIndex } from './noteIndex.ts';
import { eachInSteps, finished, type Steps } from './steps.ts';
import { isStopWord, isEveryday, termsOf } from './terms.ts';

const firstAid: ReadonlySet<string> = new Set(emergencies);

/** What is learned from the handbook's notes: once, whatever a studio adds. */
interface Prepared {
  likeness: Likeness;
  index: NoteIndex;
}

/**
 * Opens the handbook. Its notes are read and indexed at the first question, and a studio's own notes at that studio's
 * first.
 */
export const openHandbook = (load: () => readonly HandbookNote[]): Handbook => {
  let notes: ReadonlyMap<string, HandbookNote> | undefined;
  const builtIn = () => (notes ??= new Map(load().map((note) => [note.id, note])));
  const handbookNotes = () => [...builtIn().values()].map((note): Note => ({ from: 'handbook', note }));
  const preparing = function* (): Steps<Prepared> {
    const findable = yield* eachInSteps(handbookNotes(), findableNote);
    const likeness = yield* learnLikeness(findable);
    return { likeness, index: yield* indexNotes(handbookNotes(), likeness.withMore([])) };
  };
  let prepared: Prepared | undefined;
  let steps: Steps<Prepared> | undefined;
  const step = (): void => {
    steps ??= preparing();
    try {
      const { done, value } = steps.next();
      if (done === true) prepared = value;
    } catch (error) {
      // Whoever asks next begins anew.
      steps = undefined;
      throw error;
    }
  };
  const ready = (): Prepared => {
    while (!prepared) step();
    return prepared;
  };
  const withOwn = (own: readonly StudioNote[]): NoteIndex => {
    const more = own.map((note): Note => ({ from: 'studio', note }));
    const likeness = ready().likeness.withMore(more.map(findableNote));
    return finished(indexNotes([...handbookNotes(), ...more], likeness));
  };
  // Changing a note makes a new list, so the index of the old list can be collected.
  const indexes = new WeakMap<readonly StudioNote[], NoteIndex>();
  const indexOf = (own: readonly StudioNote[]): NoteIndex => {
    if (own.length === 0) return ready().index;
    const known = indexes.get(own) ?? withOwn(own);
    indexes.set(own, known);
    return known;
  };
  const knows = (word: string): boolean =>
    isStopWord(word) || termsOf(word).every((term) => ready().index.spread.has(term));
  const isKnown = (word: string): boolean => knows(word) || termsOf(word).every(isEveryday);
  const isNoFirstAid = ({ found }: FoundNote): boolean =>
    found.from === 'studio' || !firstAid.has(found.note.id);
  return {
    prepare: () => {
      if (!prepared) step();
      return prepared === undefined;
    },
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
