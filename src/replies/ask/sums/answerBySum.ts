import { mendWords } from '../../../parse/mendWords.ts';
import type { Asking, Reply } from '../../../contract/contract.ts';
import { hydrometerSum } from './hydrometerSum.ts';
import { readyBuckets } from './readyBuckets.ts';
import { recipeSum } from './recipeSum.ts';
import { saltSum } from './saltSum.ts';
import { sideBySide } from './sideBySide.ts';
import { stirFirst } from './stirFirst.ts';
import type { Sum, SumAsked } from './sumAsked.ts';
import { waterSum } from './waterSum.ts';

const sums: readonly Sum[] = [
  hydrometerSum,
  saltSum,
  waterSum,
  sideBySide,
  recipeSum,
  readyBuckets,
  stirFirst,
];

/** The answer to a question that needs a sum or a look at all buckets; undefined when a note answers it. */
export const answerBySum = async (
  general: string,
  about: Omit<SumAsked, 'heard'>,
  asking: Asking,
): Promise<Reply | undefined> => {
  const mended = mendWords(general);
  // Asked on a bucket's own page, “it” is the bucket.
  const heard =
    about.bucket && !/\bbucket\b/.test(mended)
      ? mended.replace(/\b(?:it|this one|that one|this glaze)\b/, 'bucket')
      : mended;
  const asked = { ...about, heard };
  for (const sum of sums) {
    const reply = await sum(asked, asking);
    if (reply) return reply;
  }
  return undefined;
};
