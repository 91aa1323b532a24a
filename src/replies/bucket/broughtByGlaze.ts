import type { Brought } from '../../studio/bucket/bucketEvent.ts';
import { poisonIn } from '../../studio/bucket/bucketHazards.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { isSameGlaze } from '../../studio/bucket/sameGlaze.ts';
import type { Words } from '../../words/words.ts';

/** Why glaze from another bucket puts this one on hold. */
const holdFor = (source: BucketState, { bucket: w }: Pick<Words, 'bucket'>): NonNullable<Brought['hold']> => {
  const { name, cautions } = source.settings;
  const poison = poisonIn(cautions);
  const why = source.hold ? w.mixedWithHeld(name) : w.mixedWith(name);
  if (poison !== undefined) return { cause: 'hazard', why: `${why}: ${w.poison(poison)}` };
  return { cause: source.hold?.cause === 'hazard' ? 'hazard' : 'contaminated', why };
};

/**
 * What glaze brings into a bucket besides itself: the cautions of the bucket that it came from, and a hold, unless a
 * keeper has said that the two hold the same glaze. Nothing when it is the bucket's own.
 */
export const broughtByGlaze = (
  into: BucketState,
  source: BucketState | 'own' | undefined,
  words: Pick<Words, 'bucket'>,
): Brought | undefined => {
  if (source === 'own') return undefined;
  const mine = into.settings.cautions;
  if (source === undefined)
    return {
      cautions: [],
      foreign: true,
      // Anybody may put a hand in this one: it waits until somebody knows what went in.
      ...(mine.includes('children') && {
        hold: { cause: 'contaminated' as const, why: words.bucket.mixedWithUnknown },
      }),
    };
  const cautions = source.settings.cautions.filter((one) => one !== 'children');
  if (source.hold || !isSameGlaze(into, source))
    return { cautions, foreign: true, hold: holdFor(source, words) };
  const fresh = cautions.filter((one) => !mine.includes(one));
  return fresh.length > 0 ? { cautions: fresh } : undefined;
};
