import { pressToEdit } from '../../../contract/replyParts.ts';
import { restLimitOf } from '../../../studio/bucket/rests.ts';
import { hours, since, type Instant } from '../../../studio/ids.ts';
import type { Asking } from '../../../contract/contract.ts';
import { bucketFigures, bucketRow, judgedBuckets, nameOf, type Judged } from './bucketRow.ts';
import type { Sum } from './sumAsked.ts';

const which = /\b(?:which|what|whats|who|any)\b/;
const mostUnstirred =
  /\bneeds? (?:a |to be )?(?:good )?stirring\b|\bneeds? (?:a )?(?:good )?(?:mix)\b|\b(?:longest|most|first|least|due|wants?)\b.*\bstirring\b|\bstirring\b.*\b(?:longest|most|first|least|due|longest ago)\b|\bunstirred\b|\bwithout (?:a |being )?stirring\b|\b(?:to|should i|do i|shall i) stirring first\b/;
/** “What do I stir it with”. */
const ofTools = /\bwith\b(?!out)|\bhow\b|\bwhy\b|\bminutes\b/;

/** Hours past the bucket's rest limit; a bucket of which no stir is logged comes first. */
const overdue = ({ state }: Judged, now: Instant): number =>
  state.stir ? (since(state.stir.at, now) - restLimitOf(state).limit) / hours(1) : Infinity;

const sinceStir = ({ verdict }: Judged, { words }: Asking) =>
  verdict.hoursSinceStir === null
    ? words.verdict.neverStirredYet
    : words.verdict.lastStirred(verdict.hoursSinceStir);

/** Which bucket is furthest past its rest. What is on hold is not stirred. */
export const stirFirst: Sum = async ({ heard, named }, asking) => {
  if (named.length > 0 || !which.test(heard) || !mostUnstirred.test(heard) || ofTools.test(heard))
    return undefined;
  const w = asking.words.sum;
  const all = (await judgedBuckets(asking)).filter(({ state }) => !state.hold);
  const due = all
    .map((one) => ({ ...one, past: overdue(one, asking.now) }))
    .filter(({ past }) => past > 0)
    .toSorted((a, b) => b.past - a.past || a.state.no - b.state.no);
  const [first, ...others] = due;
  if (!first)
    return {
      kind: 'answer',
      title: all.length === 0 ? w.noBuckets : w.stirNone,
      data: { sum: 'stir', buckets: [] },
    };
  return {
    kind: 'answer',
    title: w.stirMost(nameOf(first), sinceStir(first, asking)),
    facts: await Promise.all([first, ...others].slice(0, 3).map((one) => bucketRow(one, asking))),
    actions: [pressToEdit(asking.words.ask.action('stirred'), 'stirred', { bucket: String(first.state.no) })],
    data: { sum: 'stir', bucket: first.state.no, buckets: due.map(bucketFigures) },
  };
};
