import type { BucketState } from '../bucket/bucketState.ts';
import { hours, since } from '../ids.ts';
import { looseGrainsSettle, restLimitOf } from '../bucket/rests.ts';
import type { Facts } from './facts.ts';
import type { Reason } from './verdict.ts';

/** The reason for a learned rest limit that differs from the set one. */
export const restLearned = (state: BucketState): Extract<Reason, { because: 'rest-learned' }>[] => {
  const { limit, learned } = restLimitOf(state);
  if (!learned) return [];
  const { longest, shortest } = learned;
  const loose = looseGrainsSettle(state);
  return [
    {
      because: 'rest-learned',
      limitHours: limit / hours(1),
      ...(longest > 0 && { longestHours: longest / hours(1) }),
      ...(shortest !== undefined && { shortestHours: shortest / hours(1) }),
      gel: loose !== undefined && limit > loose.until,
    },
  ];
};

/** How long a bucket has rested, and where its limit comes from; undefined when that is not too long. */
export const restedTooLong = ({ state, now }: Facts): Reason[] | undefined => {
  if (!state.stir) return undefined;
  const { at } = state.stir;
  const rested = since(at, now);
  const { limit } = restLimitOf(state);
  if (rested <= limit) return undefined;
  return [
    { because: 'rested', at, hours: rested / hours(1), limitHours: limit / hours(1) },
    ...restLearned(state),
  ];
};
