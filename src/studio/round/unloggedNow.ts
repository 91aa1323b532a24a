import type { BucketState } from '../bucket/bucketState.ts';
import type { UnloggedChange } from '../contents/unloggedChange.ts';
import { days, since, type Instant } from '../ids.ts';

/** People remember for about this long what they did: common practice. */
export const rememberedFor = days(7);

/** The change to a bucket that nobody logged and that a keeper can still ask about; undefined if there is none. */
export const unloggedNow = ({ unlogged }: BucketState, now: Instant): UnloggedChange | undefined => {
  const last = unlogged?.at(-1);
  return last && since(last.found.at, now) <= rememberedFor ? last : undefined;
};
