import type { Celsius, Seconds } from '../../glaze/units.ts';
import { secondsAt20, warmthAt } from '../belief/warmth.ts';
import type { BucketState } from './bucketState.ts';

/** How warm the bucket was when it was last timed, as far as somebody told. */
export const timedAt = ({
  efflux,
  belief: { warmth },
}: Pick<BucketState, 'efflux' | 'belief'>): Celsius | undefined =>
  efflux &&
  (efflux.temperature ?? (warmth && warmth.at <= efflux.at ? warmthAt({ warmth }, efflux.at) : undefined));

export const effluxAt20 = (
  state: Pick<BucketState, 'efflux' | 'belief'>,
): Seconds | 'wont-run' | undefined => {
  const seconds = state.efflux?.seconds;
  return seconds === undefined || seconds === 'wont-run' ? seconds : secondsAt20(seconds, timedAt(state));
};
