import { coverage95 } from '../../glaze/statistics/normal.ts';
import type { Gravity } from '../../glaze/units.ts';
import type { BucketState } from './bucketState.ts';
import { driftPerDay, gravityOf } from '../contents/contents.ts';
import { withoutFlagged } from './withoutFlagged.ts';
import { days, since, type Instant } from '../ids.ts';

/**
 * The gravity that the logbook predicts; undefined until something was measured, after an unknown amount went in, and
 * after what ends all that was measured: a cake that was broken up never mixes back in fully.
 */
export const predictedNow = (
  bucket: BucketState,
  now: Instant,
): { value: Gravity; u95: number } | undefined => {
  const state = withoutFlagged(bucket);
  if (!state.believed || state.unknownSince.length > 0 || state.voided) return undefined;
  const drift = driftPerDay * Math.sqrt(Math.max(0, since(state.believed.at, now) / days(1)));
  const from = state.contents
    ? gravityOf(state.contents, state.settings.solids)
    : { value: state.believed.value, sd: state.believed.u95 / coverage95 };
  return { value: from.value, u95: coverage95 * Math.hypot(from.sd, drift) };
};
