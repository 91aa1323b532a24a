import type { Gravity } from '../../glaze/units.ts';
import type { BucketState, MeasuredGravity } from '../bucket/bucketState.ts';
import { flowBand } from './flowBand.ts';
import { gravityBand, widerThanWindow } from './gravityBand.ts';
import { hours, minutes, since, type Instant } from '../ids.ts';
import { readAt } from './readAt.ts';
import type { Window } from '../settings/bucketSettings.ts';
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

type Measured = NonNullable<Facts['measured']>;

/** The measured gravity against the window, and the reasons that it gives. */
const measuredIn = (
  measured: MeasuredGravity,
  window: Window<Gravity>,
  together: BucketState['together'],
  now: Instant,
): Measured => {
  const { value, u95, at, seq } = measured;
  const { band, edge } = gravityBand(measured, window);
  const reasons: Reason[] = [{ because: 'gravity', band, edge, value, u95, window, ...readAt(at, now) }];
  if (together) reasons.push({ because: 'together', ...together });
  return { value, u95, at, seq, band, edge, reasons };
};

/** An entry dated slightly ahead of this clock counts as now. */
const hoursSince = (at: Instant, now: Instant): number => Math.max(0, since(at, now) / hours(1));

const stirredReason = (at: Instant, now: Instant): Reason => {
  const reason: Extract<Reason, { because: 'stirred' }> = {
    because: 'stirred',
    at,
    hours: hoursSince(at, now),
  };
  if (since(now, at) > clockDifference) reason.ahead = true;
  return reason;
};

/** Field by field, because spreading them costs more than deciding. */
export const facts = (state: BucketState, now: Instant): Facts => {
  const { believed, stir, settings } = state;
  const found: Facts = { state, now, flow: flowBand(state, now), reasons: [] };
  const predicted = predictedNow(state, now);
  if (predicted) found.predicted = predicted;
  if (stir) {
    found.hoursSinceStir = hoursSince(stir.at, now);
    found.reasons.push(stirredReason(stir.at, now));
  }
  if (!believed) return found;
  const window = settings.gravity;
  const once = withSmallMoves(believed, state);
  const isWide = window !== undefined && widerThanWindow(once.u95, window);
  const together = isWide && state.moved === 0 ? state.together : undefined;
  const measured = together ? { ...once, value: together.value, u95: together.u95 } : once;
  if (window) found.measured = measuredIn(measured, window, together, now);
  found.read = together ? measured : believed;
  return found;
};
