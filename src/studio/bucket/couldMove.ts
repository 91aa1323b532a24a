import type { BucketState } from './bucketState.ts';

/** How far additions since the reading could have moved gravity: a tenth more poured than said, into a tenth less. */
export const couldMove = ({ moved }: Pick<BucketState, 'moved'>): number => moved * 1.2;

/** Whether they could have moved it by more than the reading can tell. */
export const outgrewReading = (state: BucketState): boolean =>
  state.unknownSince.length > 0 || couldMove(state) > (state.believed?.u95 ?? 0);
