import { definedOnly } from '../../definedOnly.ts';
import type { Added, Brought } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { marksInText, poisonIn } from '../../studio/bucket/bucketHazards.ts';
import type { Words } from '../../words/words.ts';

/** A caustic substance used as a dose does not make the whole bucket caustic. */
const isDose = (what: Added['what']): boolean => what === 'flocculant' || what === 'deflocculant';

/** The hazards of what a note says was added. In a bucket for children, an unknown substance counts as one. */
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

export const broughtBoth = (one: Brought | undefined, other: Brought | undefined): Brought | undefined => {
  if (!one || !other) return one ?? other;
  // Lead is named first.
  const hold =
    other.hold && one.hold
      ? { ...other.hold, why: `${other.hold.why}; ${one.hold.why}` }
      : (one.hold ?? other.hold);
  return {
    cautions: [...new Set([...one.cautions, ...other.cautions])],
    ...definedOnly({ hold }),
    ...((one.foreign ?? other.foreign) && { foreign: true as const }),
  };
};
