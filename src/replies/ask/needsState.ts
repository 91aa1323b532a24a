import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { emergencies, type Note, type NoteCommand } from '../../studio/handbook.ts';

/** Commands that a note hands over when it is about how a bucket stands. */
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

const isFirstAid = (id: string): boolean => emergencies.some((one) => one === id);

/** Whether where the bucket stands has to do with what a note says. A hold has, but with first aid. */
export const needsState = ({ from, note }: Note, { hold }: BucketState): boolean => {
  if (from === 'studio') return true;
  if (isFirstAid(note.id)) return false;
  return hold !== undefined || note.computes !== undefined || note.commands.some((one) => ofState.has(one));
};
