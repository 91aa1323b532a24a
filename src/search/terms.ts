import { sameWords, samePhrases } from './tradeWords.ts';

const segmenter = new Intl.Segmenter('en', { granularity: 'word' });

/** Words that say nothing of what is asked: every question has them, and so has every note. */
const chatter = new Set(
  `a about after again all already also always am an and any anyone anything are as at be because been before being both
  but by came can cannot cant come comes could day did didnt do does doesnt doing done dont each ever every for from
  get gets getting give glaze glazed glazes glazing go goes going got had has have having he hello help her here hey hi
  him his how i if im in into is isnt it its ive just keep know let lot lots like make makes many may me mean might more most much
  must my need no not now of off oh ok on one only or our out over please pot pots pottery really same she should so
  some somebody someone something still stuff such than thank thanks that thats the their them then there these they
  thing things this those to today too tonight up us use used using very want was way we well went were what whats when
  where which while who why will with wont work would wrong yes yesterday yet you your
  bowl bowls clay fired firing mug mugs onto piece pieces plate plates right studio vase vases
  black blue green pink red white yellow`.split(/\s+/),
);

const undoubled = (stem: string): string => (/([bdgmnprt])\1$/.test(stem) ? stem.slice(0, -1) : stem);

/** A word without its ending, so that pinhole, pinholes and pinholing are one. */
const stem = (word: string): string => {
  if (word.length < 4) return word;
  const one = word
    .replace(/ies$/, 'y')
    .replace(/(sh|ch|x|z|ss)es$/, '$1')
    .replace(/([^suiy])s$/, '$1')
    .replace(/ys$/, 'y');
  const bare = /^(.{3,})(?:ing|ed)$/.exec(one)?.[1];
  const short = bare !== undefined && /[aeiouy]/.test(bare) ? undoubled(bare) : one;
  return short.length > 3 ? short.replace(/e$/, '') : short;
};

const folded = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[’']/g, '');

/** The words of a text in order, chatter and all: no accents, one spelling. */
export const wordsOf = (text: string): string[] => {
  const words = Array.from(segmenter.segment(folded(text)))
    .filter(({ isWordLike }) => isWordLike)
    .flatMap(({ segment }) => segment.split(/[._]/))
    .filter((word) => word !== '');
  return samePhrases(words).map((word) => sameWords.get(word) ?? word);
};

export const isChatter = (word: string): boolean => wordsOf(word).every((one) => chatter.has(one));

/** What a text is about, as the terms that are looked up: no endings, no chatter, no bare numbers. */
export const termsOf = (text: string): string[] =>
  wordsOf(text)
    .filter((word) => !chatter.has(word) && !/^\p{N}+$/u.test(word))
    .map(stem);
