import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { matchBuckets, nearestBuckets } from '../../studio/naming/matchBuckets.ts';
import { normalizedName } from '../../text/normalizedName.ts';
import { isEmptyWord, verbOf } from './plainVerbs.ts';
import type { PlainText } from './takePlain.ts';

/** A bucket as a line names it: the ones that it may be, and the words for it. */
export interface BucketSaid {
  buckets: readonly BucketState[];
  typed: string;
  /** By a beginning, a part or a misspelling of its name. */
  guessed: boolean;
}

const mostWords = 5;
/** Among more words than this nobody looks for a misspelt name. */
const mostWordsLeft = 24;

/** Runs of words that stand side by side, the longest first. */
const runsOf = (text: PlainText, most: number): { typed: string; from: number; to: number }[] => {
  const words = text.words();
  const runs = [];
  for (let length = Math.min(most, words.length); length > 0; length--)
    for (let i = 0; i + length <= words.length; i++) {
      const [first, last] = [words[i], words[i + length - 1]];
      if (!first || !last) continue;
      const typed = text.left.slice(first.from, last.to);
      if (!/[\u0001]/.test(typed)) runs.push({ typed, from: first.from, to: last.to });
    }
  return runs;
};

/** A bucket by its whole name or nickname, taken out of the line before its numbers: a name may hold some. */
export const takeNamedBucket = (
  text: PlainText,
  all: readonly BucketState[],
  isOther: (word: string) => boolean,
): BucketSaid | undefined => {
  const names = new Map<string, BucketState[]>();
  for (const state of all) {
    const { name, nick } = state.settings;
    const nicks = nick === undefined || isOther(normalizedName(nick)) ? [] : [normalizedName(nick)];
    for (const one of new Set([normalizedName(name), ...nicks]))
      names.set(one, [...(names.get(one) ?? []), state]);
  }
  for (const { typed, from, to } of runsOf(text, mostWords)) {
    const said = normalizedName(typed);
    const fits = /^\d*$/.test(said) ? undefined : names.get(said);
    if (!fits) continue;
    text.cut(from, to);
    const inUse = fits.filter(({ retired }) => !retired);
    return { buckets: inUse.length > 0 ? inUse : fits, typed, guessed: false };
  }
  return undefined;
};

const end = String.raw`(?![\p{L}\d]|[.,]\d|\s*(?:%|°|["']))`;

/** A bucket by its number: `bucket 4`, `#4`, `added to 4`, or a number that the line begins with. */
export const takeNumberedBucket = (
  text: PlainText,
  all: readonly BucketState[],
  isUnit: (word: string) => boolean,
): BucketSaid | undefined => {
  const ways = [
    new RegExp(String.raw`(?:\b(?:bucket|pail|number|no|nr)\.?\s*#?|#)(?<no>\d{1,9})${end}`, 'iu'),
    new RegExp(String.raw`^\s*(?<no>\d{1,9})${end}(?!\s+(?<unit>[\p{L}]+))`, 'iu'),
    new RegExp(String.raw`^\s*(?<no>\d{1,9})${end}\s+(?<unit>[\p{L}]+)`, 'iu'),
    new RegExp(
      String.raw`\b(?:to|into|in|of|off|from|stirred|sieved|weighed|measured|checked)\s+(?<no>\d{1,9})${end}(?:\s+(?<unit>[\p{L}]+))?`,
      'iu',
    ),
  ];
  for (const [i, way] of ways.entries()) {
    const found = way.exec(text.left);
    const { no, unit } = found?.groups ?? {};
    if (!found || no === undefined || (unit !== undefined && isUnit(unit))) continue;
    const buckets = all.filter((one) => one.no === Number(no));
    // Only “bucket 99” surely names a bucket; another number may measure something.
    if (buckets.length === 0 && i > 0) continue;
    const at = found.index + found[0].indexOf(no);
    text.cut(i === 0 ? found.index : at, at + no.length);
    return { buckets, typed: no, guessed: false };
  }
  return undefined;
};

/** A bucket by a beginning, a part or a misspelling of its name, in the words that nothing else was made of. */
export const takeNearBucket = (text: PlainText, all: readonly BucketState[]): BucketSaid | undefined => {
  if (text.words().length > mostWordsLeft) return undefined;
  for (const { typed, from, to } of runsOf(text, 3)) {
    const words = typed.split(/\s+/);
    if (normalizedName(typed).length < 3 || /^[\d\s.,]+$/.test(typed)) continue;
    if ([words[0], words.at(-1)].some((word) => isEmptyWord(word ?? '') || verbOf(word ?? ''))) continue;
    const part = matchBuckets(typed, all);
    const near = part.length > 0 || normalizedName(typed).length < 4 ? part : nearestBuckets(typed, all);
    const inUse = near.filter(({ retired }) => !retired);
    if (inUse.length === 0) continue;
    text.cut(from, to);
    return { buckets: inUse, typed, guessed: true };
  }
  return undefined;
};
