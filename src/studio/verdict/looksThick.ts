import type { CupTime, FlowLook } from '../bucket/bucketEvent.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { flowBand } from './flowBand.ts';
import type { Instant } from '../ids.ts';

/** Whether a bucket looks thick now; when nobody says, whether it did the last time. */
export const looksThick = (
  state: BucketState,
  { flow, look }: { flow?: CupTime; look?: FlowLook },
  now: Instant,
): boolean => {
  if (look === 'thick' || flow?.seconds === 'wont-run') return true;
  if (!flow && !look) return flowBand(state, now).band === 'thick';
  const { efflux: _efflux, look: _look, ...unseen } = state;
  return flowBand({ ...unseen, ...(flow && { efflux: { ...flow, at: now } }) }, now).band === 'thick';
};
