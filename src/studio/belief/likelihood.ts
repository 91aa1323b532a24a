import type { Instant } from '../ids.ts';
import { agedView } from './aged.ts';
import { type Belief, type Component, place } from './mixture.ts';
import { slip } from './priors.ts';
import type { Windows } from './startBelief.ts';

/** What was read of a bucket: gravity, ln seconds, or both. */
export interface Sight {
  gravity: { value: number; sd: number };
  flow?: { value: number; sd: number };
}

const densityIn = ({ mean, covariance }: Component, { gravity, flow }: Sight): number => {
  const size = mean.length;
  const [g = 0, , z = 0] = mean;
  const a = gravity.value - g;
  const gg = (covariance[0] ?? 0) + gravity.sd ** 2;
  const alone = Math.exp((-a * a) / (2 * gg)) / Math.sqrt(2 * Math.PI * gg);
  if (!flow) return alone;
  // How it runs, once the gravity is known.
  const gz = covariance[place.flow] ?? 0;
  const zz = (covariance[place.flow * (size + 1)] ?? 0) + flow.sd ** 2 - (gz * gz) / gg;
  const b = flow.value - z - (gz / gg) * a;
  return (alone * Math.exp((-b * b) / (2 * zz))) / Math.sqrt(2 * Math.PI * zz);
};

/**
 * How likely a reading is by a belief, if it is true, and if the hand slipped. Only ratios of the two mean anything.
 */
export const likelihoodOf = (
  { belief, settings }: { belief: Belief; settings: Windows },
  sight: Sight,
  at: Instant,
): { read: number; slipped: number } => {
  let read = 0;
  for (const one of agedView(belief, at, settings).components) read += one.weight * densityIn(one, sight);
  const anything = slip.gravity * (sight.flow ? slip.flow : 1);
  return { read: (1 - slip.chance) * read, slipped: slip.chance * anything };
};
