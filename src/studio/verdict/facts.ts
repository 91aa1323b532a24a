import { definedOnly } from '../../definedOnly.ts';
import type { BucketState, MeasuredGravity } from '../bucket/bucketState.ts';
import { flowBand } from './flowBand.ts';
import { gravityBand, widerThanWindow } from './gravityBand.ts';
import { hours, minutes, since, type Instant } from '../ids.ts';
import { readAt } from './readAt.ts';
import { predictedNow } from '../bucket/predictedNow.ts';
import type { GravityBand, Reason } from './verdict.ts';

/** What the rules look at, worked out once. */
export interface Facts {
  state: BucketState;
  now: Instant;
  hoursSinceStir?: number;
  predicted?: { value: MeasuredGravity['value']; u95: number };
  measured?: MeasuredGravity & { band: GravityBand; edge: boolean; reasons: Reason[] };
  /** The reading behind the measured gravity, or one of those of a session taken together. */
  read?: MeasuredGravity;
  flow: ReturnType<typeof flowBand>;
  /** Reasons that belong to every answer from the grid. */
  reasons: Reason[];
}

/** Clocks may differ by this much. */
const clockDifference = minutes(2);

/**
 * The believed gravity with small additions since: they ask for no new reading, so the logbook's prediction is used.
 */
export const withSmallMoves = (
  believed: MeasuredGravity,
  { moved, predicted }: Pick<BucketState, 'moved' | 'predicted'>,
): MeasuredGravity =>
  moved > 0 && predicted
    ? { ...believed, value: predicted.value, u95: Math.max(believed.u95, predicted.u95) }
    : believed;

export const facts = (state: BucketState, now: Instant): Facts => {
  const { believed, stir, settings } = state;
  const predicted = predictedNow(state, now);
  // An entry dated slightly ahead of this clock counts as now.
  const stirred = stir && Math.max(0, since(stir.at, now) / hours(1));
  const window = settings.gravity;
  const once = believed && withSmallMoves(believed, state);
  const wide = once !== undefined && window !== undefined && widerThanWindow(once.u95, window);
  const together = wide && state.moved === 0 ? state.together : undefined;
  const measured = once && together ? { ...once, value: together.value, u95: together.u95 } : once;
  const banded = measured && window && gravityBand(measured, window);
  return {
    state,
    now,
    ...definedOnly({ hoursSinceStir: stirred, predicted }),
    ...(measured &&
      banded && {
        measured: {
          ...measured,
          ...banded,
          reasons: [
            {
              because: 'gravity',
              ...banded,
              value: measured.value,
              u95: measured.u95,
              window,
              ...readAt(measured.at, now),
            },
            ...(together ? [{ because: 'together' as const, ...together }] : []),
          ],
        },
      }),
    ...(believed && { read: together && measured ? measured : believed }),
    flow: flowBand(state, now),
    reasons:
      stir && stirred !== undefined
        ? [
            {
              because: 'stirred',
              at: stir.at,
              hours: stirred,
              ...(since(now, stir.at) > clockDifference && { ahead: true as const }),
            },
          ]
        : [],
  };
};
