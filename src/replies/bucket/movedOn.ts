import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Seq } from '../../studio/ids.ts';
import { toRun, type Asking, type Reply } from '../../contract/contract.ts';
import { describeEntry } from './describeEntry.ts';
import { verdictReply } from '../verdict/verdictReply.ts';

/**
 * Somebody changed the bucket after the action was offered. Shows who and what, a fresh verdict, and a button to log it
 * anyway.
 */
export const movedOn = async (
  bucket: BucketState,
  after: Seq,
  line: string,
  asking: Asking,
): Promise<Reply> => {
  const { words, book } = asking;
  const fresh = await verdictReply(bucket, asking);
  const since = (await book.entries(bucket.no, { most: 5 })).filter(({ seq }) => seq > after);
  const told = await Promise.all(since.map((entry) => describeEntry(entry, asking)));
  return {
    ...fresh,
    kind: 'refusal',
    private: true,
    title: words.desk.movedOn(fresh.title),
    reasons: [...told, ...(fresh.reasons ?? [])],
    actions: [...(fresh.actions ?? []).slice(0, 2), toRun(words.desk.logAnyway, line)],
  };
};
