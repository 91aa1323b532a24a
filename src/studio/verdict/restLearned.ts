import type { BucketState } from '../bucket/bucketState.ts';
import { hours, since, type Instant } from '../ids.ts';
import { looseGrainsSettle, restLimitOf } from '../bucket/rests.ts';
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

/** The reasons for a bucket that has rested too long: how long, and where its limit comes from. */
export const restedTooLong = (state: BucketState, now: Instant): Reason[] =>
  state.stir
    ? [
        {
          because: 'rested',
          at: state.stir.at,
          hours: since(state.stir.at, now) / hours(1),
          limitHours: restLimitOf(state).limit / hours(1),
        },
        ...restLearned(state),
      ]
    : [];
