import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Text } from '../../words/text/text.ts';
import type { Logging } from '../../contract/contract.ts';

const bleach = /\b(?:bleach\w*|hypochlorite|javel)\b/i;
const acid = /\b(?:vinegar|acids?|citric|acetic|descaler|ammonia|latex)\b/i;

/** As far back as what was poured in may be in it still. */
const recent = 50;

/** What is warned of when a note says that bleach, or what must never meet it, went in. */
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
  return [...(both ? [w.bothPoured] : []), bleach.test(note) ? w.bleach : w.acid];
};
