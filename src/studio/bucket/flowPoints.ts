import type { CupTime } from './bucketEvent.ts';
import type { BucketState, FlowPoint } from './bucketState.ts';
import { minutes, since, type Instant } from '../ids.ts';

/** A dose works for ten minutes after it was stirred in, and a few people look at their watch. */
const doseWorks = minutes(8);

/** Whether a dose is at work still: how it flows now is not yet how it will. */
export const isDoseAtWork = ({ flocculant }: Pick<BucketState, 'flocculant'>, at: Instant): boolean => {
  const from = flocculant.stirredIn ?? flocculant.lastAt;
  return from !== undefined && from <= at && since(from, at) < doseWorks;
};

/** The last few readings of each of the last few doses are enough for a line, and no more are carried along. */
const perDose = 2;
const mostPoints = 12;

/** The bucket with one more look at its flow, when what is in it is known. */
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

/** What the readings said holds no longer: something else is in the pail now. */
export const withoutFlowPoints = (state: BucketState): BucketState => {
  const { flow: _, ...flocculant } = state.flocculant;
  return { ...state, flocculant };
};
