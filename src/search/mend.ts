import { edits } from '../studio/edits.ts';
import { chatter } from './everydayWords.ts';
import type { NoteIndex } from './noteIndex.ts';
import { isEveryday, termsAmong } from './terms.ts';

/** Letters that may be wrong in a word of this length: a short one with one wrong is another word. */
const slips = (length: number): number => (length > 9 ? 2 : length > 4 ? 1 : 0);

/** Letters wrong in a word that may be another one mistyped; a first letter seldom is. */
const slipsFrom = (typed: string, word: string): number | undefined => {
  const most = typed.length < 4 ? 0 : slips(Math.max(typed.length, word.length));
  if (word.charAt(0) !== typed.charAt(0) || Math.abs(word.length - typed.length) > most) return undefined;
  const wrong = edits(typed, word);
  return wrong <= most ? wrong : undefined;
};

/** The words nearest to one that was mistyped. */
const nearest = (typed: string, known: Iterable<string>): string[] => {
  const near = [...known].flatMap((word) => {
    const wrong = slipsFrom(typed, word);
    return wrong === undefined ? [] : [{ word, wrong }];
  });
  const least = Math.min(...near.map(({ wrong }) => wrong));
  return near.filter(({ wrong }) => wrong === least).map(({ word }) => word);
};

/** A question's words as they were meant. */
export interface Mended {
  words: readonly string[];
  /** Terms that were guessed at: they say a little less. */
  guessed: ReadonlySet<string>;
}

/** Mends a question's words letter by letter, by the words that the notes are written in. */
export const mend = (
  asked: readonly string[],
  { spread, vocabulary }: Pick<NoteIndex, 'spread' | 'vocabulary'>,
): Mended => {
  const guessed = new Set<string>();
  const spreadOf = (word: string): number => {
    const [term] = termsAmong([word]);
    return term === undefined ? 0 : (spread.get(term) ?? 0);
  };
  const words = asked.map((word) => {
    const [term] = termsAmong([word]);
    if (term === undefined || spread.has(term) || isEveryday(term)) return word;
    const [meant] = nearest(word, vocabulary).toSorted((a, b) => spreadOf(b) - spreadOf(a));
    // “Wher” says no more than “where” does.
    if (meant === undefined) return (word.length < 8 && nearest(word, chatter)[0]) || word;
    for (const one of termsAmong([meant])) guessed.add(one);
    return meant;
  });
  return { words, guessed };
};
