import { present } from '../../present.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Text } from '../../words/text/text.ts';
import type { Logging } from '../../contract/contract.ts';

const bleach = /\b(?:bleach\w*|hypochlorite|javel)\b/i;
const acid = /\b(?:vinegar|acids?|citric|acetic|descaler|ammonia|latex)\b/i;

/** How many entries back a substance may still be in the bucket. */
const recent = 50;

/** Cautions if a note says that bleach went in, or a substance that must never meet it. */
export const chemistryCautions = async (
  { no }: BucketState,
  note: string | undefined,
  { book, words: { added: w } }: Pick<Logging, 'book' | 'words'>,
): Promise<Text[]> => {
  if (note === undefined || !(bleach.test(note) || acid.test(note))) return [];
  const before = (await book.entries(no, { most: recent })).flatMap((entry) =>
    entry.undoneBy === undefined && entry.note !== undefined ? [entry.note] : [],
  );
  const all = [note, ...before];
  const both = all.some((one) => bleach.test(one)) && all.some((one) => acid.test(one));
  return present([both && w.bothPoured, bleach.test(note) ? w.bleach : w.acid]);
};
