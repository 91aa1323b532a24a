import type { BucketState } from '../bucketState.ts';

/**
 * The most that additions since the reading can have moved gravity: 10 % more was poured than said, into 10 % less,
 * so 1.1 / 0.9.
 */
export const couldMove = ({ moved }: Pick<BucketState, 'moved'>): number => moved * 1.2;

/** Whether additions since the reading can have moved gravity by more than the reading's uncertainty. */
export const outgrewReading = (state: BucketState): boolean =>
  state.unknownSince.length > 0 || couldMove(state) > (state.believed?.u95 ?? 0);
