import MiniSearch, { type SearchResult } from 'minisearch';
import { edits } from '../studio/edits.ts';
import {
  studioNoteId,
  type Found,
  type FoundNote,
  type Handbook,
  type HandbookNote,
  type Note,
  type StudioNote,
} from '../studio/handbook.ts';
import { isChatter, termsOf, wordsOf } from './terms.ts';

interface Indexed {
  id: string;
  title: string;
  words: string;
  answer: string;
  rest: string;
}

const indexed = ({ from, note }: Note): Indexed =>
  from === 'handbook'
    ? {
        id: note.id,
        title: note.title,
        words: note.words.join('. '),
        answer: note.answer,
        rest: [...note.facts.map(({ text }) => text), ...note.dont].join(' '),
      }
    : { id: studioNoteId(note.no), title: note.title, words: note.words, answer: note.text, rest: '' };

/** Slips that a word of this length may have. */
const slips = (term: string): number => (term.length > 7 ? 2 : term.length > 4 ? 1 : 0);

const newIndex = (notes: readonly Note[]): MiniSearch<Indexed> => {
  const index = new MiniSearch<Indexed>({
    fields: ['title', 'words', 'answer', 'rest'],
    // In prose it stands everywhere; in what a note is called it tells a bucket from a coat.
    tokenize: (text, field) =>
      termsOf(text).filter((term) => term !== 'bucket' || field === 'title' || field === 'words'),
    processTerm: (term) => term,
    searchOptions: {
      boost: { title: 3, words: 2.5, answer: 1, rest: 0.5 },
      prefix: (term) => term.length > 3,
      fuzzy: (term) => slips(term) || false,
      weights: { prefix: 0.6, fuzzy: 0.35 },
    },
  });
  index.addAll(notes.map(indexed));
  return index;
};

/** Tuned on half of the questions; what it is worth is measured on the other half. */
const tuned = {
  /** The part of a question that a note must cover to answer it. */
  least: 0.46,
  /** Of a long question a smaller part, when so many of its terms are met. */
  leastOfLong: 0.3,
  manyTerms: 3,
  /** Smaller, too, when the question names the note by a word of its title. */
  leastOfNamed: 0.33,
  /** A word that no note has says less than one that a note is about. */
  unknown: 0.75,
  /** How near a note of the studio's own must come to the best one to go before it. */
  ownShare: 0.4,
  /** For each word of a note's phrase that stands in the question as it is. */
  phrase: 0.5,
};

/** A long story is looked up by its first words. */
const mostTerms = 40;

const weightOfField: Record<string, number> = { title: 1, words: 1, answer: 0.7, rest: 0.5 };

/** How alike a word of the question and one of a note are; a first letter is seldom mistyped. */
const likeness = (term: string, known: string): number => {
  if (known === term) return 1;
  if (term.length > 3 && known.startsWith(term)) return 0.8;
  return known.charAt(0) === term.charAt(0) && edits(term, known) <= slips(term) ? 0.7 : 0;
};

/** How well a note meets one term of the question, from 0 to 1. */
const met = (term: string, { match }: SearchResult): number =>
  Object.entries(match).reduce((best, [known, fields]) => {
    const alike = likeness(term, known);
    return alike === 0
      ? best
      : Math.max(best, alike * Math.max(...fields.map((name) => weightOfField[name] ?? 0)));
  }, 0);

interface Entry {
  note: Note;
  /** What people call it, in words of which each counts. */
  phrases: string[];
}

interface Searched {
  index: MiniSearch<Indexed>;
  entries: ReadonlyMap<string, Entry>;
  /** In how many notes a term stands. */
  spread: ReadonlyMap<string, number>;
}

const phrasesOf = ({ from, note }: Note): string[] =>
  [note.title, ...(from === 'handbook' ? note.words : note.words.split(/[,;\n]/))]
    .map((phrase) => wordsOf(phrase))
    .filter(({ length }) => length > 1)
    .map((words) => words.join(' '));

const searched = (notes: readonly Note[]): Searched => {
  const spread = new Map<string, number>();
  for (const note of notes) {
    const { title, words, answer, rest } = indexed(note);
    for (const term of new Set(termsOf(`${title}. ${words}. ${answer} ${rest}`)))
      spread.set(term, (spread.get(term) ?? 0) + 1);
  }
  return {
    index: newIndex(notes),
    entries: new Map(notes.map((note) => [indexed(note).id, { note, phrases: phrasesOf(note) }])),
    spread,
  };
};

/** How many words of the longest phrase of a note stand in the question. */
const phraseIn = (question: string, phrases: readonly string[]): { words: number; phrase: string } =>
  phrases
    .filter((phrase) => ` ${question} `.includes(` ${phrase} `))
    .map((phrase) => ({ words: phrase.split(' ').length, phrase }))
    .reduce((best, one) => (one.words > best.words ? one : best), { words: 0, phrase: '' });

const search = ({ index, entries, spread }: Searched, question: string): Found => {
  const asked = wordsOf(question).join(' ');
  const terms = [...new Set(termsOf(question))].slice(0, mostTerms);
  if (terms.length === 0) return { answers: [], near: [] };
  const weight = (term: string): number => {
    const notes = spread.get(term);
    const all = Math.log(1 + entries.size);
    return notes === undefined ? tuned.unknown * all : Math.log(1 + entries.size / notes);
  };
  const whole = terms.reduce((sum, term) => sum + weight(term), 0);
  const results = index.search(terms.join(' '), { tokenize: (text) => text.split(' ') });
  const ranked = results.slice(0, 15).flatMap((result) => {
    const entry = entries.get(String(result.id));
    if (!entry) return [];
    const said = phraseIn(asked, entry.phrases);
    const inPhrase = new Set(termsOf(said.phrase));
    const each = terms.map((term) => ({ term, met: inPhrase.has(term) ? 1 : met(term, result) }));
    const score = each.reduce((sum, one) => sum + one.met * weight(one.term), 0) / whole;
    const many = each.filter((one) => one.met >= 0.7).length >= tuned.manyTerms;
    const named = terms.some((term) => result.match[term]?.includes('title'));
    const answers =
      score >= tuned.least || (named && score >= tuned.leastOfNamed) || (many && score >= tuned.leastOfLong);
    const rank = result.score * (0.4 + score) * (1 + tuned.phrase * said.words);
    return [{ found: entry.note, score, answers, rank }];
  });
  const best = Math.max(0, ...ranked.map(({ rank }) => rank));
  // What the studio wrote itself goes first, unless it only touches what was asked.
  const first = ({ found, rank, answers }: (typeof ranked)[number]): number =>
    found.from === 'studio' && answers && rank >= tuned.ownShare * best ? 1 : 0;
  ranked.sort((a, b) => first(b) - first(a) || b.rank - a.rank);
  const plain = ({ found, score }: FoundNote): FoundNote => ({ found, score });
  return {
    answers: ranked.filter(({ answers }) => answers).map(plain),
    near: ranked.map(plain),
  };
};

/** Opens the handbook; its notes are read and indexed when the first question comes. */
export const openHandbook = (load: () => readonly HandbookNote[]): Handbook => {
  let notes: ReadonlyMap<string, HandbookNote> | undefined;
  const builtIn = () => (notes ??= new Map(load().map((note) => [note.id, note])));
  const indexes = new WeakMap<readonly StudioNote[], Searched>();
  const withOwn = (own: readonly StudioNote[]): Searched =>
    searched([
      ...[...builtIn().values()].map((note): Note => ({ from: 'handbook', note })),
      ...own.map((note): Note => ({ from: 'studio', note })),
    ]);
  let plain: Searched | undefined;
  const builtInIndex = () => (plain ??= withOwn([]));
  return {
    note: (id) => builtIn().get(id),
    knows: (word) => isChatter(word) || termsOf(word).every((term) => builtInIndex().spread.has(term)),
    find(question, own) {
      if (own.length === 0) return search(builtInIndex(), question);
      let known = indexes.get(own);
      if (!known) {
        known = withOwn(own);
        indexes.set(own, known);
      }
      return search(known, question);
    },
  };
};
