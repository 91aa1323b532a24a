import { definedOnly } from '../../definedOnly.ts';
import type { BucketState } from './bucketState.ts';
import { without } from './without.ts';
import { withoutFlowPoints, withoutLoosenPoints } from './flowPoints.ts';
import type { Instant } from '../ids.ts';

/** Events after which the known gravity and flow no longer apply. */
export type VoidedBy = 'cake' | 'sieved' | 'frozen' | 'contaminated';

/** A cake only separates water and powder, nothing is lost: the contents in the logbook stay valid. */
const keepsContents = (by: VoidedBy): boolean => by === 'cake';

/** Whether the contents can no longer be worked out from the last reading, because an unknown amount went in or out. */
export const isAccountBroken = ({ voided }: Pick<BucketState, 'voided'>): boolean =>
  voided !== undefined && !keepsContents(voided.by);

/** Makes earlier readings invalid: the bucket has to be measured again. */
export const withVoid = (state: BucketState, by: VoidedBy, at: Instant): BucketState => {
  const { efflux: _efflux, look: _look, together: _together, ...rest } = state;
  // A cake does not replace frost or contamination, which are worse.
  const voided = isAccountBroken(state) && keepsContents(by) ? state.voided : { by, at };
  const next: BucketState = { ...rest, ...definedOnly({ voided }) };
  return keepsContents(by) ? next : withoutLoosenPoints(withoutFlowPoints(next));
};

/** Frozen or contaminated. After frost the bucket has to be sieved, then stirred, then weighed. */
export const withTrouble = (
  state: BucketState,
  cause: 'frozen' | 'contaminated',
  at: Instant,
): BucketState => {
  const voided = withVoid(state, cause, at);
  if (cause === 'contaminated') return voided;
  const next = without(voided, 'stir');
  return next.settings.mesh === 'never' ? next : { ...next, unsieved: { what: 'frozen', since: at } };
};

/** Folds a sieving: what stayed in the sieve is out of the glaze. After frost the glaze must be stirred again. */
export const withSieve = (state: BucketState, at: Instant, mesh: number | undefined): BucketState => {
  const sieved = { at, ...definedOnly({ mesh }) };
  if (!state.unsieved) return { ...state, sieved };
  const isFrozen = state.unsieved.what === 'frozen';
  const next = without(withVoid(state, isFrozen ? 'frozen' : 'sieved', at), 'unsieved');
  return { ...(isFrozen ? without(next, 'stir') : next), sieved };
};
