import type { BucketState } from '../bucket/bucketState.ts';
import { hours, since, type Instant } from '../ids.ts';
import { looseGrainsSettle, restLimitOf } from '../bucket/rests.ts';
import type { Reason } from './verdict.ts';

/** What a rest limit rests on that is another than the one that was set. */
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

/** That a bucket has rested longer than it may, and what that limit rests on. */
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
