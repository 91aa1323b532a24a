import type { BucketState } from '../bucket/bucketState.ts';
import { edits } from '../edits.ts';
import { normalizedName } from '../normalizedName.ts';
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

/** A bucket beside its names as they are compared, folded once for all the words of a question. */
interface Called {
  state: BucketState;
  name: string;
  nick: string | undefined;
}

const calledBy = (state: BucketState): Called => {
  const { name, nick } = state.settings;
  return { state, name: normalizedName(name), nick: nick === undefined ? undefined : normalizedName(nick) };
};

/** The first of these ways in which some bucket is meant, one in use before one that is retired. */
const firstOf = (all: readonly Called[], ...fits: ((one: Called) => boolean)[]): BucketState[] => {
  for (const group of [all.filter(({ state }) => !state.retired), all])
    for (const fit of fits) {
      const found = group.filter(fit);
      if (found.length > 0) return found.map(({ state }) => state);
    }
  return [];
};

/** A long name with a letter or two wrong. */
const isMisspelt = (phrase: string, { name, state }: Called): boolean => {
  if (state.retired || name.length < 6 || Math.abs(name.length - phrase.length) > 2) return false;
  return edits(phrase, name) <= (name.length < 10 ? 1 : 2);
};

/** The buckets that some words in a row name: surely, by the whole name; or as a name begun. */
const named = (
  words: readonly string[],
  around: { before: string; after: string },
  all: readonly Called[],
  isCommon: (word: string) => boolean,
): BucketState[] => {
  const phrase = words.map(normalizedName).join(' ').trim();
  if (phrase === '') return [];
  const number = numbered.exec(words[0]?.startsWith('#') ? `#${phrase}` : phrase)?.[1];
  if (number !== undefined)
    return matchBuckets(
      number,
      all.map(({ state }) => state),
    );
  if (/^\d+$/.test(phrase)) return [];
  const pointed = [around.before, around.after].some((word) => /^(?:bucket|pail)$/i.test(word));
  // A nickname or name that is an everyday word too says nothing unless it is called a bucket.
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
      const found = named(words.slice(i, i + length), around, called, isCommon);
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
