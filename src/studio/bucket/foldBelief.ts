import { startBelief } from '../belief/startBelief.ts';
import type { Belief } from '../belief/mixture.ts';
import type { StreamNo } from '../ids.ts';
import type { StudioCup } from '../settings/studio.ts';
import { applyToBelief } from './applyToBelief.ts';
import type { BucketEntry } from './bucketEvent.ts';
import type { BucketState } from './bucketState.ts';
import { bucketStates } from './foldBucket.ts';

/**
 * The belief that a bucket's entries add up to: by when they happened, undone ones left out, as its state is. The same
 * for the same entries, always.
 */
export const foldBelief = (
  no: StreamNo,
  entries: readonly BucketEntry[],
  cups: readonly StudioCup[] = [],
): Belief | undefined => {
  const bySeq = new Map(entries.map((entry) => [entry.seq, entry]));
  let [belief, before]: [Belief | undefined, BucketState | undefined] = [undefined, undefined];
  for (const after of bucketStates(no, entries)) {
    const entry = bySeq.get(after.seq);
    if (!entry) throw new Error(`a state without its entry, ${after.seq}`);
    if (entry.event.kind === 'setup' && !before)
      belief = startBelief(entry.at, after.settings, entry.event.volume);
    else if (belief && before) belief = applyToBelief(belief, { entry, before, after, cups });
    before = after;
  }
  return belief;
};
