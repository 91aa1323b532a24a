import { coverage95 } from '../../glaze/statistics/normal.ts';
import { likelihoodOf, type Sight } from '../belief/likelihood.ts';
import { noise } from '../belief/priors.ts';
import { slowedBy, warmthAt } from '../belief/warmth.ts';
import type { BucketEventOf } from '../bucket/bucketEvent.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import type { Instant } from '../ids.ts';

type Reading = BucketEventOf<'reading'>;
type Weighing = NonNullable<Reading['gravity']>;

/** How many times as likely one of two must be to be taken as true: from memory. */
export const muchLikelier = 20;

const weighedAs = ({ value, u95 }: { value: number; u95: number }): Sight['gravity'] => ({
  value,
  sd: Math.max(noise.gravity, u95 / coverage95),
});

/** Seconds tell about a bucket only by the cup that its window is set for, and as they would be at 20 °C. */
const sightOf = (
  { gravity, flow, temperature }: Reading & { gravity: Weighing },
  { settings: { cup, efflux }, belief }: BucketState,
  at: Instant,
): Sight => {
  const seen = { gravity: weighedAs(gravity) };
  if (!flow || flow.seconds === 'wont-run' || !efflux || (cup !== flow.cup && cup !== flow.kind)) return seen;
  const slowed = slowedBy(warmthAt(belief, at, temperature));
  const value = Math.log(flow.seconds) - slowed.by;
  return { ...seen, flow: { value, sd: Math.hypot(noise.flow, slowed.sd) } };
};

const isKnown = ({ retired, hold, believed, voided }: BucketState): boolean =>
  !retired && !hold && !voided && believed !== undefined;

/**
 * The bucket that a reading was perhaps of, when it is odd for the one that it was logged for and fits another much
 * better. Where several fit alike, nobody can tell.
 */
export const perhapsOf = (
  reading: Reading,
  { before, others, at }: { before: BucketState; others: readonly BucketState[]; at: Instant },
): BucketState | undefined => {
  const { gravity } = reading;
  if (!gravity || !isKnown(before)) return undefined;
  const weighed = { ...reading, gravity };
  const here = sightOf(weighed, before, at);
  const alone = { gravity: here.gravity };
  const [byAll, byGravity] = [likelihoodOf(before, here, at), likelihoodOf(before, alone, at)];
  const isOdd = (mine: typeof byAll) => mine.read < mine.slipped;
  if (!isOdd(byAll) && !isOdd(byGravity)) return undefined;
  const fits = others
    .filter((one) => one.no !== before.no && isKnown(one))
    .flatMap((bucket) => {
      // The two are compared by what both can tell.
      const [seen, mine] = sightOf(weighed, bucket, at).flow
        ? ([here, byAll] as const)
        : ([alone, byGravity] as const);
      if (!isOdd(mine)) return [];
      const ratio = likelihoodOf(bucket, seen, at).read / (mine.read + mine.slipped);
      return ratio >= muchLikelier ? [{ bucket, ratio }] : [];
    })
    .toSorted((a, b) => b.ratio - a.ratio);
  const [first, second] = fits;
  return first && (!second || first.ratio >= 3 * second.ratio) ? first.bucket : undefined;
};

/** Which of two ways to read a weight a bucket bears out; undefined when it cannot tell, or was never measured. */
export const likelierWay = <T extends { gravity: number; u95: number }>(
  bucket: BucketState,
  [one, other]: readonly [T, T],
  at: Instant,
): T | undefined => {
  if (!isKnown(bucket)) return undefined;
  const chanceOf = ({ gravity, u95 }: T) => {
    const { read, slipped } = likelihoodOf(bucket, { gravity: weighedAs({ value: gravity, u95 }) }, at);
    return read + slipped;
  };
  const ratio = chanceOf(one) / chanceOf(other);
  return ratio >= muchLikelier ? one : ratio <= 1 / muchLikelier ? other : undefined;
};
