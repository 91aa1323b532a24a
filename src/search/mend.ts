import { editDistance } from '../studio/editDistance.ts';
import { stopWords } from './everydayWords.ts';
import type { NoteIndex } from './noteIndex.ts';
import { isEveryday, termsAmong } from './terms.ts';

/** How many letters may be wrong, by length: changing a letter of a short word makes another word. */
const slips = (length: number): number => (length > 9 ? 2 : length > 4 ? 1 : 0);

/** The number of wrong letters, if the text may be a misspelling of the word. The first letter is seldom wrong. */
const slipsFrom = (typed: string, word: string): number | undefined => {
  const most = typed.length < 4 ? 0 : slips(Math.max(typed.length, word.length));
  if (word.charAt(0) !== typed.charAt(0) || Math.abs(word.length - typed.length) > most) return undefined;
  const wrong = editDistance(typed, word);
  return wrong <= most ? wrong : undefined;
};

/** The known words that are closest to a misspelt one. */
const nearest = (typed: string, known: Iterable<string>): string[] => {
  const near = [...known].flatMap((word) => {
    const wrong = slipsFrom(typed, word);
    return wrong === undefined ? [] : [{ word, wrong }];
  });
  const least = Math.min(...near.map(({ wrong }) => wrong));
  return near.filter(({ wrong }) => wrong === least).map(({ word }) => word);
};

/** A question's words after spelling correction. */
export interface CorrectedQuestion {
  words: readonly string[];
  /** Corrected terms, which count for less. */
  guessed: ReadonlySet<string>;
}

/** Corrects a question's spelling by the words of the notes. */
export const correctSpelling = (
  asked: readonly string[],
  { spread, vocabulary }: Pick<NoteIndex, 'spread' | 'vocabulary'>,
): CorrectedQuestion => {
  const guessed = new Set<string>();
  const spreadOf = (word: string): number => {
    const [term] = termsAmong([word]);
    return term === undefined ? 0 : (spread.get(term) ?? 0);
  };
  const words = asked.map((word) => {
    const [term] = termsAmong([word]);
    if (term === undefined || spread.has(term) || isEveryday(term)) return word;
    const [meant] = nearest(word, vocabulary).toSorted((a, b) => spreadOf(b) - spreadOf(a));
    // "Wher" counts as little as "where".
    if (meant === undefined) return (word.length < 8 && nearest(word, stopWords)[0]) || word;
    for (const one of termsAmong([meant])) guessed.add(one);
    return meant;
  });
  return { words, guessed };
};
