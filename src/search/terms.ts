import { chatter, elsewhere, everyday } from './everydayWords.ts';
import { sameWords, samePhrases } from './tradeWords.ts';

const segmenter = new Intl.Segmenter('en', { granularity: 'word' });

const undoubled = (stem: string): string => (/([bdgmnprt])\1$/.test(stem) ? stem.slice(0, -1) : stem);

/** A watery bucket is not about water, nor a runny one about a glaze that ran. */
const keepsEnding = new Set(['watery', 'runny']);

/** A word without its ending, so that pinhole, pinholes and pinholing are one. */
const stem = (word: string): string => {
  if (word.length < 4 || keepsEnding.has(word)) return word;
  const one = word
    .replace(/ies$/, 'y')
    .replace(/(sh|ch|x|z|ss)es$/, '$1')
    .replace(/([^suiy])s$/, '$1')
    .replace(/ys$/, 'y');
  const bare = /^(.{3,})(?:ing|ed|y)$/.exec(one)?.[1];
  const short = bare !== undefined && /[aeiouy]/.test(bare) ? undoubled(bare) : one;
  const plain = short.length > 3 ? short.replace(/e$/, '') : short;
  return plain.replace(/(.{4})ation$/, '$1at');
};

const folded = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[’']/g, '');

/** “1.45” alone is a specific gravity; with a unit after it, it is something else. */
const bareGravity =
  /(?<![\d.,])1[.,][2-9]\d{0,2}(?![\d.,]*\d)(?!\s*(?:%|°|(?:mm|cm|ml|l|lit\w+|kg|g|gr\w+|h|hrs?|hours?|min\w*|s|sec\w*|gal\w*|lbs?|oz|cups?|tsp|tbsp|qt|quarts?|days?|weeks?|in|inch\w*)\b))/gu;

/** The words of a text as they were typed, but for accents, case and punctuation. */
export const typedWords = (text: string): string[] =>
  Array.from(segmenter.segment(folded(text)))
    .filter(({ isWordLike }) => isWordLike)
    .flatMap(({ segment }) => segment.split(/[._]/))
    .filter((word) => word !== '');

/** The words of a text in order, chatter and all: no accents, one spelling. */
export const wordsOf = (text: string): string[] =>
  samePhrases(typedWords(folded(text).replace(bareGravity, 'gravity'))).map(
    (word) => sameWords.get(word) ?? word,
  );

export const isChatter = (word: string): boolean => wordsOf(word).every((one) => chatter.has(one));

/** What a text is about, as the terms that are looked up: no endings, no chatter, no bare numbers. */
export const termsOf = (text: string): string[] => termsAmong(wordsOf(text));

/** The same of words that are known already. */
export const termsAmong = (words: readonly string[]): string[] =>
  words.filter((word) => !chatter.has(word) && !/^\p{N}+$/u.test(word)).map(stem);

const stems = (words: ReadonlySet<string>): ReadonlySet<string> => new Set([...words].map(stem));
const everydayTerms = stems(everyday);
const elsewhereTerms = stems(elsewhere);

/** Whether a term is of everyday talk, and says little. */
export const isEveryday = (term: string): boolean => everydayTerms.has(term);

/** Whether a term is of other work than the glaze room's. */
export const isElsewhere = (term: string): boolean => elsewhereTerms.has(term);
