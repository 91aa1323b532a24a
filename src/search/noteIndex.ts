import MiniSearch from 'minisearch';
import { studioNoteId, type Note } from '../studio/handbook.ts';
import type { Findable } from './likeness.ts';
import { stopWords } from './everydayWords.ts';
import type { Steps } from './steps.ts';
import { isEveryday, termsAmong, termsOf, wordsOf } from './terms.ts';

interface Indexed {
  id: string;
  title: string;
  words: string;
  answer: string;
  rest: string;
}

/** A name of a note: its words in order, and those of them that are terms. */
interface Phrase {
  words: string;
  count: number;
  terms: readonly string[];
}

interface Entry {
  id: string;
  note: Note;
  phrases: readonly Phrase[];
}

export interface NoteIndex {
  index: MiniSearch<Indexed>;
  entries: ReadonlyMap<string, Entry>;
  /** How many notes have each term. */
  spread: ReadonlyMap<string, number>;
  /** Terms that are a note's whole name: they weigh much here, however common they are elsewhere. */
  names: ReadonlySet<string>;
  /** The words of the notes as they are written, for spelling correction. */
  vocabulary: ReadonlySet<string>;
  /** How much a question's words are like each note, by id. */
  alike(words: readonly string[]): ReadonlyMap<string, number>;
}

export type { Entry as IndexedNote };

const idOf = ({ from, note }: Note): string => (from === 'handbook' ? note.id : studioNoteId(note.no));

const namesOf = ({ from, note }: Note): string[] => [
  note.title,
  ...(from === 'handbook' ? note.words : note.words.split(/[,;\n]/)),
];

const indexNote = (one: Note, [title, ...names]: readonly Phrase[]): Indexed => {
  const { from, note } = one;
  // Common in a note's text, but in its name it distinguishes a bucket from a coat.
  const prose = (text: string) =>
    termsOf(text)
      .filter((term) => term !== 'bucket')
      .join(' ');
  return {
    id: idOf(one),
    title: title?.terms.join(' ') ?? '',
    words: names.map(({ terms }) => terms.join(' ')).join(' '),
    answer: prose(from === 'handbook' ? note.answer : note.text),
    rest: from === 'handbook' ? prose([...note.facts.map(({ text }) => text), ...note.dont].join(' ')) : '',
  };
};

const proseOf = ({ from, note }: Note): string =>
  from === 'handbook'
    ? [note.answer, ...note.facts.map(({ text }) => text), ...note.dont].join(' ')
    : note.text;

const phrase = (text: string): Phrase => {
  const words = wordsOf(text);
  return { words: words.join(' '), count: words.length, terms: [...new Set(termsAmong(words))] };
};

const read = new WeakMap<Note['note'], readonly Phrase[]>();
const phrasesOf = (one: Note): readonly Phrase[] => {
  const known = read.get(one.note) ?? namesOf(one).map(phrase);
  read.set(one.note, known);
  return known;
};

/** A note as the search learns it. */
export const findableNote = (note: Note): Findable => ({
  names: phrasesOf(note).map(({ words }) => words.split(' ')),
  says: wordsOf(`${note.note.title} ${proseOf(note)}`),
});

/** Builds an in-memory index of notes; `likeness` compares words with each of them. */
export function* indexNotes(
  notes: readonly Note[],
  likeness: (words: readonly string[]) => number[],
): Steps<NoteIndex> {
  const index = new MiniSearch<Indexed>({
    fields: ['title', 'words', 'answer', 'rest'],
    tokenize: (terms) => terms.split(' ').filter((term) => term !== ''),
    processTerm: (term) => term,
    searchOptions: {
      boost: { title: 3, words: 2.5, answer: 1, rest: 0.5 },
      prefix: (term) => term.length > 3,
      weights: { prefix: 0.6, fuzzy: 0 },
    },
  });
  const names = new Set<string>();
  const vocabulary = new Set<string>();
  const spread = new Map<string, number>();
  const entries = new Map<string, Entry>();
  for (const note of notes) {
    const phrases = phrasesOf(note);
    const one = indexNote(note, phrases);
    const written = [...phrases.flatMap(({ words }) => words.split(' ')), ...wordsOf(proseOf(note))];
    for (const word of written)
      if (!stopWords.has(word) && !termsAmong([word]).every(isEveryday)) vocabulary.add(word);
    index.add(one);
    entries.set(one.id, { id: one.id, note, phrases });
    for (const { count, terms } of phrases) if (count === 1) for (const term of terms) names.add(term);
    const all = `${one.title} ${one.words} ${one.answer} ${one.rest}`.split(' ');
    for (const term of new Set(all)) spread.set(term, (spread.get(term) ?? 0) + 1);
    yield;
  }
  const ids = [...entries.keys()];
  const alike = (words: readonly string[]) => {
    const each = likeness(words);
    return new Map(ids.map((id, i) => [id, each[i] ?? 0]));
  };
  return { index, entries, spread, names, vocabulary, alike };
}
