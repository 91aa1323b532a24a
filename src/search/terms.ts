import { stopWords, otherTradeWords, everydayWords } from './everydayWords.ts';
import { sameWords, samePhrases } from './tradeWords.ts';
import { withoutAccents } from '../text/normalizedName.ts';

const segmenter = new Intl.Segmenter('en', { granularity: 'word' });

const undoubled = (stem: string): string => (/([bdgmnprt])\1$/.test(stem) ? stem.slice(0, -1) : stem);

/** Not stemmed: a watery bucket is not about water, and a runny glaze is not one that ran. */
const keepsEnding = new Set(['watery', 'runny']);

/** A word's stem, so that pinhole, pinholes and pinholing are the same. */
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

/** An apostrophe does not divide a word: “don’t” is one. */
const withoutApostrophes = (text: string): string => withoutAccents(text).replace(/[’']/g, '');

/** "1.45" alone is a specific gravity; before a unit it is not. */
const bareGravity =
  /(?<![\d.,])1[.,][2-9]\d{0,2}(?![\d.,]*\d)(?!\s*(?:%|°|(?:mm|cm|ml|l|lit\w+|kg|g|gr\w+|h|hrs?|hours?|min\w*|s|sec\w*|gal\w*|lbs?|oz|cups?|tsp|tbsp|qt|quarts?|days?|weeks?|in|inch\w*)\b))/gu;

/** Text that is divided into words at its spaces, as the segmenter does, but much faster. */
const plain = /^[a-z0-9 ?!]*$/;

/** The words of a text as typed, without accents, case and punctuation. */
export const typedWords = (text: string): string[] => {
  const bare = withoutApostrophes(text);
  return plain.test(bare) ? (bare.match(/[a-z0-9]+/g) ?? []) : segmented(bare);
};

const segmented = (text: string): string[] =>
  Array.from(segmenter.segment(text))
    .filter(({ isWordLike }) => isWordLike)
    .flatMap(({ segment }) => segment.split(/[._]/))
    .filter((word) => word !== '');

/** The words of a text in order, stop words included: without accents, in one spelling. */
export const wordsOf = (text: string): string[] =>
  samePhrases(typedWords(withoutApostrophes(text).replace(bareGravity, 'gravity'))).map(
    (word) => sameWords.get(word) ?? word,
  );

export const isStopWord = (word: string): boolean => wordsOf(word).every((one) => stopWords.has(one));

/** A text's search terms: stemmed, without stop words and bare numbers. */
export const termsOf = (text: string): string[] => termsAmong(wordsOf(text));

/** The search terms among words that are split already. */
export const termsAmong = (words: readonly string[]): string[] =>
  words.filter((word) => !stopWords.has(word) && !/^\p{N}+$/u.test(word)).map(stem);

const stems = (words: ReadonlySet<string>): ReadonlySet<string> => new Set([...words].map(stem));
const everydayTerms = stems(everydayWords);
const elsewhereTerms = stems(otherTradeWords);

/** Whether a term is an everyday word, which says little. */
export const isEveryday = (term: string): boolean => everydayTerms.has(term);

/** Whether a term belongs to work outside the glaze room. */
export const isOtherTrade = (term: string): boolean => elsewhereTerms.has(term);
