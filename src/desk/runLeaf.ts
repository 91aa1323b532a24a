import { refusal, type AnswerAndAfterwards, type Asking, type Leaf } from '../contract/contract.ts';
import type { Request } from '../contract/desk.ts';
import { printLine } from '../contract/parseLine.ts';
import { whenOption, withOriginalTime } from '../contract/withOriginalTime.ts';
import { movedOn } from '../replies/bucket/movedOn.ts';
import type { BucketState } from '../studio/bucket/bucketState.ts';
import type { Seq } from '../studio/ids.ts';
import type { Logbook } from '../studio/logbook/ports.ts';
import { readOptions } from './readOptions.ts';

const isBucket = (value: unknown): value is BucketState =>
  typeof value === 'object' && value !== null && 'settings' in value && 'no' in value;

/** Whether somebody changed the bucket after the action was offered. Then the action is not run. */
const isOvertaken = async (request: Request, after: Seq, values: Record<string, unknown>, asking: Asking) => {
  const bucket = values['bucket'];
  if (!isBucket(bucket) || bucket.seq === after) return undefined;
  if (after > bucket.seq)
    return refusal(asking.words.desk.neverLogged(bucket.settings.name, after, bucket.seq), {
      option: 'after',
    });
  const [last] = await asking.book.entries(bucket.no, { most: 1 });
  // What the program noted for itself changes nothing for whoever presses.
  if (last && last.seq <= after) return undefined;
  return movedOn(bucket, after, printLine(request.path, request.typed), asking);
};

/** Reads a command's options and runs it in the logbook that it is given. */
export const runLeaf = async <B extends Logbook>(
  leaf: Leaf & { run(values: never, context: Asking & { book: B }): Promise<AnswerAndAfterwards> },
  request: Request,
  context: Asking & { book: B },
): Promise<AnswerAndAfterwards> => {
  const taken = await readOptions(leaf, request, context);
  if (!taken.ok) return taken.reply;
  const moved =
    request.after === undefined
      ? undefined
      : await isOvertaken(request, request.after, taken.values, context);
  // The kinds parsed these values, and `asks` and `logs` check that they match this leaf's options.
  return moved ?? leaf.run(taken.values as never, context);
};

/** The same, for a member who may have been linked or forgotten since the platform looked them up. */
export const runFor = async <B extends Logbook>(
  leaf: Leaf & { run(values: never, context: Asking & { book: B }): Promise<AnswerAndAfterwards> },
  sent: Request,
  asking: Asking & { book: B },
  standsFor = asking.book.standsFor(asking.member),
): Promise<AnswerAndAfterwards> => {
  const member = await standsFor;
  if (member === undefined) return refusal(asking.words.desk.forgotten);
  const request = await withOriginalTime(leaf, sent, { ...asking, member });
  const reply = await runLeaf(leaf, request, { ...asking, member, typed: request.typed });
  const name = whenOption(leaf);
  return request === sent || reply.kind === 'answer' || name === undefined
    ? reply
    : { ...reply, data: { ...reply.data, [name]: request.typed[name] } };
};
