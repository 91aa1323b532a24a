import type { BucketState } from './bucketState.ts';
import { withoutFlowPoints } from './flowPoints.ts';
import type { Instant } from '../ids.ts';

/** What ends the gravity and the flow that were known before. */
export type VoidedBy = 'cake' | 'sieved' | 'frozen' | 'contaminated';

/** Water and powder are all there still, only parted: the logbook's account goes on. */
const keepsContents = (by: VoidedBy): boolean => by === 'cake';

/** Whether nobody can reckon on from the last reading, since something went in or out by no known amount. */
export const isAccountBroken = ({ voided }: Pick<BucketState, 'voided'>): boolean =>
  voided !== undefined && !keepsContents(voided.by);

/** Nothing that was measured before tells what the bucket is now: it is measured anew. */
export const withVoid = (state: BucketState, by: VoidedBy, at: Instant): BucketState => {
  const { efflux: _efflux, look: _look, together: _together, ...rest } = state;
  // What a cake hides is less than what frost or dirt did before.
  const voided = isAccountBroken(state) && keepsContents(by) ? state.voided : { by, at };
  const next: BucketState = { ...rest, ...(voided && { voided }) };
  return keepsContents(by) ? next : withoutFlowPoints(next);
};

/** Frozen or contaminated: after frost it is sieved, then stirred, then weighed. */
export const withTrouble = (
  state: BucketState,
  cause: 'frozen' | 'contaminated',
  at: Instant,
): BucketState => {
  const next = withVoid(state, cause, at);
  if (cause === 'contaminated') return next;
  delete next.stir;
  return next.settings.mesh === 'never' ? next : { ...next, unsieved: { what: 'frozen', since: at } };
};

/** Sieved. What lay in the sieve is gone from the glaze; and what frost made of it is only stirred in after that. */
export const withSieve = (state: BucketState, at: Instant, mesh: number | undefined): BucketState => {
  const { unsieved } = state;
  const next: BucketState = {
    ...(unsieved ? withVoid(state, unsieved.what === 'frozen' ? 'frozen' : 'sieved', at) : state),
    sieved: { at, ...(mesh !== undefined && { mesh }) },
  };
  delete next.unsieved;
  if (unsieved?.what === 'frozen') delete next.stir;
  return next;
};
