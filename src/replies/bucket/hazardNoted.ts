import { pressToRun } from '../../contract/replyParts.ts';
import type { Logging, Reply } from '../../contract/contract.ts';
import { marksInText, poisonIn } from '../../studio/bucket/bucketHazards.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';

const mostActions = 3;
/** A reason for a hold is no longer. */
const longestWhy = 200;

/** The same reply, and what there is to say and to press when a note names a hazard that the bucket is not marked with. */
export const withHazardNoted = (
  reply: Reply,
  { no, settings, hold }: BucketState,
  note: string | undefined,
  { words: { bucket: w }, role }: Pick<Logging, 'words' | 'role'>,
): Reply => {
  if (note === undefined) return reply;
  const named = marksInText(note).filter((one) => !settings.cautions.includes(one));
  if (named.length === 0) return reply;
  const bucket = String(no);
  const holdIt = pressToRun(w.holdIt, 'bucket hold', {
    bucket,
    cause: 'hazard',
    why: note.slice(0, longestWhy),
  });
  // What is logged as having gone in marks the bucket, and holds it for lead and its like.
  const logIt = pressToRun(poisonIn(named) === undefined ? w.wentIn : w.wentInHold, 'added', {
    bucket,
    what: 'other',
    note,
  });
  return {
    ...reply,
    cautions: [w.noteNames(named), ...named.map(w.caution), ...(reply.cautions ?? [])],
    actions: [role === 'keeper' && !hold ? holdIt : logIt, ...(reply.actions ?? [])].slice(0, mostActions),
  };
};
