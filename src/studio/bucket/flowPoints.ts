import type { CupTime } from './bucketEvent.ts';
import type { BucketState, FlowPoint } from './bucketState.ts';
import { minutes, since, type Instant } from '../ids.ts';

/** A dose takes ten minutes to work after it was stirred in; people are a little early. */
const doseWorks = minutes(8);

/** Whether a dose is still working: the flow has not reached its new value. */
export const isDoseAtWork = ({ flocculant }: Pick<BucketState, 'flocculant'>, at: Instant): boolean => {
  const from = flocculant.stirredIn ?? flocculant.lastAt;
  return from !== undefined && from <= at && since(from, at) < doseWorks;
};

/** The last readings of the last doses are enough for a line; older ones are dropped. */
const perDose = 2;
const mostPoints = 12;

/** Adds a flow reading, when the amount of flocculant is known. */
export const addFlowPoint = (state: BucketState, flow: CupTime): BucketState => {
  const { flocculant, contents, predicted } = state;
  if (!contents || !predicted || flocculant.unknown || !(contents.solids > 0)) return state;
  const { doses, heptahydrate: salt } = flocculant;
  const point: FlowPoint = {
    ...flow,
    doses,
    salt,
    percent: (100 * salt) / contents.solids,
    gravity: predicted.value,
  };
  const before = flocculant.flow ?? [];
  const same = before.filter((one) => one.doses === doses).slice(-(perDose - 1));
  const points = [...before.filter((one) => one.doses !== doses), ...same, point];
  return { ...state, flocculant: { ...flocculant, flow: points.slice(-mostPoints) } };
};

/** Drops the flow readings: something else is in the pail now. */
export const withoutFlowPoints = (state: BucketState): BucketState => {
  const { flow: _, ...flocculant } = state.flocculant;
  return { ...state, flocculant };
};
