import type { BucketState } from './bucketState.ts';
import { edits } from './edits.ts';
import { foldedName } from './foldedName.ts';
import { matchBuckets } from './matchBuckets.ts';

/** Buckets that a question names. */
export interface BucketsNamed {
  buckets: BucketState[];
  /** The question without their names. */
  rest: string;
  /** The question as it would be asked of any bucket: “White Gloss” is not a question about white. */
  general: string;
}

/** A bucket's name is seldom of more words. */
const mostWords = 5;

/** Stands in the question where a bucket's name stood: nothing that can be typed between spaces. */
const anyBucket = ' ';

const numbered = /^(?:bucket|pail|no|nr|#) ?(\d{1,9})$/;

const isWhole = (phrase: string, { settings: { name, nick } }: BucketState): boolean =>
  phrase === foldedName(name) || (nick !== undefined && phrase === foldedName(nick));

/** A long name with a letter or two wrong. */
const isMisspelt = (phrase: string, { settings: { name } }: BucketState): boolean => {
  const right = foldedName(name);
  if (right.length < 6 || Math.abs(right.length - phrase.length) > 2) return false;
  return edits(phrase, right) <= (right.length < 10 ? 1 : 2);
};

/** The buckets that some words in a row name: surely, by the whole name; or as a name begun. */
const named = (
  words: readonly string[],
  around: { before: string; after: string },
  all: readonly BucketState[],
  isCommon: (word: string) => boolean,
): BucketState[] => {
  const phrase = words.map(foldedName).join(' ').trim();
  if (phrase === '') return [];
  const number = numbered.exec(words[0]?.startsWith('#') ? `#${phrase}` : phrase)?.[1];
  if (number !== undefined) return matchBuckets(number, all);
  if (/^\d+$/.test(phrase)) return [];
  const found = matchBuckets(phrase, all);
  const pointed = [around.before, around.after].some((word) => /^(?:bucket|pail)$/i.test(word));
  // A nickname or name that is an everyday word too says nothing unless it is called a bucket.
  if (words.length === 1 && isCommon(phrase) && !pointed) return [];
  const whole = found.filter((one) => isWhole(phrase, one));
  if (whole.length > 0) return whole;
  const misspelt = all.filter((one) => !one.retired && isMisspelt(phrase, one));
  if (misspelt.length > 0) return misspelt;
  if (words.length > 1 || phrase.length < 4) return [];
  return found.filter(({ settings }) => foldedName(settings.name).split(' ')[0] === phrase);
};

/** Finds buckets by name, nickname or number inside a question; the longest name counts. */
export const bucketsNamed = (
  question: string,
  all: readonly BucketState[],
  isCommon: (word: string) => boolean,
): BucketsNamed => {
  let words = question.split(/\s+/).filter((word) => word !== '');
  const buckets = new Map<number, BucketState>();
  for (let length = Math.min(mostWords, words.length); length > 0; length--)
    for (let i = 0; i + length <= words.length; i++) {
      if (words.slice(i, i + length).includes(anyBucket)) continue;
      const around = { before: words[i - 1] ?? '', after: words[i + length] ?? '' };
      const found = named(words.slice(i, i + length), around, all, isCommon);
      if (found.length === 0) continue;
      for (const one of found) buckets.set(one.no, one);
      words = [...words.slice(0, i), anyBucket, ...words.slice(i + length)];
    }
  return {
    buckets: [...buckets.values()],
    rest: words.filter((word) => word !== anyBucket).join(' '),
    general: words.map((word) => (word === anyBucket ? 'bucket' : word)).join(' '),
  };
};
