import { pressToRun } from '../../contract/replyParts.ts';
import { definedOnly } from '../../definedOnly.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { nameKey } from '../../text/normalizedName.ts';
import type { Afterwards, Asking, Reply } from '../../contract/contract.ts';

/** What says nothing is no question. */
const isQuestion = (typed: string): boolean => nameKey(typed).length > 2;

/** Writes an unanswered question down for the keepers, without who asked it. */
export const keepOpenQuestion = (
  question: string,
  state: BucketState | undefined,
  asking: Asking,
): { afterwards?: Afterwards } =>
  isQuestion(question)
    ? {
        afterwards: (book) =>
          book.keepQuestion({ text: question, at: asking.now, ...definedOnly({ bucket: state?.no }) }),
      }
    : {};

/** Says that the keepers see the question, and offers to put one's name to it. */
export const withAskKeepers = (reply: Reply, question: string, asking: Asking): Reply =>
  isQuestion(question)
    ? {
        ...reply,
        reasons: [...(reply.reasons ?? []), asking.words.openQuestion.kept],
        actions: [
          ...(reply.actions ?? []).slice(0, 2),
          pressToRun(asking.words.openQuestion.withMyName, 'note wanted', { question }),
        ],
      }
    : reply;
