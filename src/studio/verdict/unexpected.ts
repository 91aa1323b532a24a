import { coverage95 } from '../../glaze/statistics/normal.ts';
import { isFlagged } from '../bucket/withoutFlagged.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { gravityOf } from '../contents/contents.ts';
import type { Reason } from './verdict.ts';

/** What the logbook expected instead of a reading that no second one has settled. */
export const unexpected = ({ state }: { state: BucketState }): Reason[] => {
  if (!state.unexpected) return [];
  const { value, sd } = gravityOf(state.unexpected.expected, state.settings.solids);
  return [
    { because: 'unexpected', value, u95: coverage95 * sd, ...(!isFlagged(state) && { borneOut: true }) },
  ];
};
