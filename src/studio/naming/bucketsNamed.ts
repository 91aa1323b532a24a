import type { BucketState } from '../bucket/bucketState.ts';
import { editDistance } from '../editDistance.ts';
import { normalizedName } from '../../text/normalizedName.ts';
import { calledBy, firstOf, matchBuckets, type NormalizedBucket } from './matchBuckets.ts';

export interface BucketsNamed {
  buckets: BucketState[];
  /** The question without the buckets' names. */
  rest: string;
  /** The question with a placeholder for each name: “White Gloss” is not a question about white. */
  general: string;
}

/** A bucket's name rarely has more words. */
const mostWords = 5;

/** Placeholder for a bucket's name in a question: a character that cannot be typed between spaces. */
const anyBucket = ' ';

const numbered = /^(?:bucket|pail|no|nr|#) ?(\d{1,9})$/;

/** A long name with one or two letters wrong. */
const isMisspelt = (phrase: string, { name, state }: NormalizedBucket): boolean => {
  if (state.retired || name.length < 6 || Math.abs(name.length - phrase.length) > 2) return false;
  return editDistance(phrase, name) <= (name.length < 10 ? 1 : 2);
};

/** The buckets that a run of words names: by the whole name, or else by its beginning. */
const bucketsInPhrase = (
  words: readonly string[],
  around: { before: string; after: string },
  all: readonly NormalizedBucket[],
  isCommon: (word: string) => boolean,
): BucketState[] => {
  const phrase = words.map(normalizedName).join(' ').trim();
  if (phrase === '') return [];
  const number = numbered.exec(words[0]?.startsWith('#') ? `#${phrase}` : phrase)?.[1];
  const states = all.map(({ state }) => state);
  if (number !== undefined) return matchBuckets(number, states);
  if (/^\d+$/.test(phrase)) return [];
  const pointed = [around.before, around.after].some((word) => /^(?:bucket|pail)$/i.test(word));
  // A name that is also an everyday word counts only when the question calls it a bucket.
  if (words.length === 1 && isCommon(phrase) && !pointed) return [];
  const whole = firstOf(
    all,
    ({ nick }) => nick === phrase,
    ({ name }) => name === phrase,
  );
  if (whole.length > 0) return whole;
  const misspelt = all.filter((one) => isMisspelt(phrase, one));
  if (misspelt.length > 0) return misspelt.map(({ state }) => state);
  if (words.length > 1 || phrase.length < 4) return [];
  return firstOf(all, ({ name }) => name.split(' ')[0] === phrase);
};

/** Finds buckets by name, nickname or number inside a question; the longest name counts. */
export const bucketsNamed = (
  question: string,
  all: readonly BucketState[],
  isCommon: (word: string) => boolean,
): BucketsNamed => {
  let words = question.split(/\s+/).filter((word) => word !== '');
  const called = all.map(calledBy);
  const buckets = new Map<number, BucketState>();
  for (let length = Math.min(mostWords, words.length); length > 0; length--)
    for (let i = 0; i + length <= words.length; i++) {
      if (words.slice(i, i + length).includes(anyBucket)) continue;
      const around = { before: words[i - 1] ?? '', after: words[i + length] ?? '' };
      const found = bucketsInPhrase(words.slice(i, i + length), around, called, isCommon);
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
