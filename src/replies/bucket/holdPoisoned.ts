import type { BucketCaution } from '../../studio/settings/bucketSettings.ts';
import { poisonIn } from '../../studio/bucket/bucketHazards.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Logging } from '../../contract/contract.ts';

type Logged = Parameters<Logging['book']['log']>[2];

/** A bucket that was just marked with raw lead, cadmium or the like is held; one that a keeper has cleared of it stays so. */
export const holdPoisoned = async (
  state: BucketState,
  before: readonly BucketCaution[],
  logged: Logged,
  { book, words }: Pick<Logging, 'book' | 'words'>,
): Promise<BucketState> => {
  const poison = poisonIn(state.settings.cautions.filter((one) => !before.includes(one)));
  if (poison === undefined || state.hold) return state;
  const why = words.bucket.poison(poison);
  return (await book.log(state.no, { kind: 'hold', cause: 'hazard', why }, logged)).state;
};
