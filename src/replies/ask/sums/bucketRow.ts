import { pressToRun } from '../../../contract/replyParts.ts';
import type { Action, Asking, Reply } from '../../../contract/contract.ts';
import type { BucketState } from '../../../studio/bucket/bucketState.ts';
import { decide } from '../../../studio/verdict/decide.ts';
import type { Verdict } from '../../../studio/verdict/verdict.ts';

export interface Judged {
  state: BucketState;
  verdict: Verdict;
}

/** The buckets in use, each with its verdict. */
export const judgedBuckets = async ({ book, now, role }: Asking): Promise<Judged[]> => {
  const { sure } = await book.studio();
  return (await book.buckets())
    .filter(({ retired }) => !retired)
    .map((state) => ({ state, verdict: decide(state, { now, role, sure }) }));
};

export const nameOf = ({ state }: Judged): string => state.settings.name;

/** A bucket as the list shows it. */
export const bucketRow = async (
  { state, verdict }: Judged,
  { words, book }: Asking,
): Promise<NonNullable<Reply['facts']>[number]> => ({
  label: words.bucket.listName(state.no, state.settings.name),
  text: words.bucket.listText(verdict, (await book.studio()).units),
});

export const bucketFigures = ({ state, verdict }: Judged) => ({
  number: state.no,
  name: state.settings.name,
  step: verdict.step,
  gravity: verdict.gravity,
  hoursSinceStir: verdict.hoursSinceStir,
});

/** A button for what the bucket needs now. */
export const whatItNeeds = ({ state }: Judged, { words }: Asking): Action =>
  pressToRun(words.ask.ofBucket(state.settings.name), 'water-or-stir', { bucket: String(state.no) });
