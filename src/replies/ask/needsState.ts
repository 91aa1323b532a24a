import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { emergencies, type Note, type NoteCommand } from '../../studio/handbook.ts';

/** Note commands that only make sense for the bucket's current state. */
const ofState: ReadonlySet<NoteCommand> = new Set([
  'water-or-stir',
  'reading',
  'added',
  'stirred',
  'sieved',
  'dose',
  'dose-deflocculant',
  'dip-time',
  'batch-correct',
]);

/**
 * Whether a note's answer depends on the bucket's state. On a bucket that is on hold, every note but first aid does.
 */
export const needsState = ({ from, note }: Note, { hold }: BucketState): boolean => {
  if (from === 'studio') return true;
  if (emergencies.some((one) => one === note.id)) return false;
  return hold !== undefined || note.computes !== undefined || note.commands.some((one) => ofState.has(one));
};
