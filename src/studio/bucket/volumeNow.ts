import type { Millilitres } from '../../glaze/units.ts';
import type { BucketState } from './bucketState.ts';
import { withUnloggedUse, volumeOf, type Estimate } from '../contents/contents.ts';
import { days, since, type Instant } from '../ids.ts';

/** An older volume, or one from before unlogged use, has to be asked for again. */
const volumeShelfLife = days(7);

/** What the pail holds now; undefined when the last volume is too old. */
export const volumeNow = (state: BucketState, now: Instant): Estimate<Millilitres> | undefined => {
  const { contents, volumeAt, foldedTo, settings } = state;
  if (!contents || volumeAt === undefined || since(volumeAt, now) > volumeShelfLife) return undefined;
  return volumeOf(withUnloggedUse(contents, since(foldedTo, now) / days(1)), settings.solids);
};
