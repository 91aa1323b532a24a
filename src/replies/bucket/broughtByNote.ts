import type { Added, Brought } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { marksInText, poisonIn } from '../../studio/bucket/bucketHazards.ts';
import type { Words } from '../../words/words.ts';

/** A dose of a caustic in a whole bucket leaves no caustic bucket. */
const isDose = (what: Added['what']): boolean => what === 'flocculant' || what === 'deflocculant';

/** What a note says went in, in the words of hazards; and in a bucket for children, whatever is not known. */
export const broughtByNote = (
  what: Added['what'],
  note: string | undefined,
  into: BucketState,
  { bucket: w }: Pick<Words, 'bucket'>,
): Brought | undefined => {
  const cautions = marksInText(note ?? '').filter((one) => one !== 'caustic' || !isDose(what));
  const poison = poisonIn(cautions);
  if (poison !== undefined) return { cautions, hold: { cause: 'hazard', why: w.poison(poison) } };
  if (cautions.length > 0) return { cautions };
  return what === 'other' && into.settings.cautions.includes('children') ? { cautions: [] } : undefined;
};

/** Both of them, as one. */
export const broughtBoth = (one: Brought | undefined, other: Brought | undefined): Brought | undefined => {
  if (!one || !other) return one ?? other;
  // Lead is the first thing to know of it.
  const hold =
    other.hold && one.hold
      ? { ...other.hold, why: `${other.hold.why}; ${one.hold.why}` }
      : (one.hold ?? other.hold);
  return {
    cautions: [...new Set([...one.cautions, ...other.cautions])],
    ...(hold && { hold }),
    ...((one.foreign ?? other.foreign) && { foreign: true as const }),
  };
};
