import { coverage95 } from '../../glaze/statistics/normal.ts';
import type { Gravity } from '../../glaze/units.ts';
import { contentsFrom, gravityOf, volumeOf } from '../contents/contents.ts';
import type { Seq } from '../ids.ts';
import type { BucketState, MeasuredGravity } from './bucketState.ts';

/**
 * Whether the last reading is one that the logbook did not expect: what is believed of the bucket does not bear it out, and
 * no second one has agreed with it yet.
 */
export const isFlagged = ({
  believed,
  unexpected,
  belief,
}: Pick<BucketState, 'believed' | 'unexpected' | 'belief'>): boolean =>
  believed !== undefined && unexpected?.to.seq === believed.seq && belief.borneOut !== believed.seq;

/**
 * The bucket without a reading that the logbook did not expect: that counts for nothing until a second one agrees with
 * it. Its gravity is then what the logbook expected.
 */
export const withoutFlagged = (state: BucketState): BucketState => {
  const { unexpected, contents, settings } = state;
  if (!unexpected || !isFlagged(state)) return state;
  const { expected, from, volumeKnown } = unexpected;
  const slurry = gravityOf(expected, settings.solids);
  const known = { value: slurry.value, u95: coverage95 * slurry.sd };
  return {
    ...state,
    believed: { ...known, at: from.at, seq: from.seq },
    predicted: known,
    ...(contents && {
      contents: volumeKnown
        ? expected
        : contentsFrom(volumeOf(contents, settings.solids), slurry, settings.solids),
    }),
  };
};

/** The gravity of a bucket by the readings that count and what was logged since. */
export const gravityHeld = (bucket: BucketState | undefined): Gravity | undefined => {
  const counted = bucket && withoutFlagged(bucket);
  return counted?.predicted?.value ?? counted?.believed?.value;
};

const agree = (one: MeasuredGravity, other: MeasuredGravity): boolean =>
  Math.abs(one.value - other.value) <= Math.hypot(one.u95, other.u95);

/** The readings that counted, with those that were flagged until the next one agreed. */
export const countedReadings = (states: Iterable<BucketState>): ReadonlySet<Seq> => {
  const counted = new Set<Seq>();
  let flagged: MeasuredGravity[] = [];
  let last: Seq | undefined;
  for (const state of states) {
    const { believed } = state;
    if (!believed || believed.seq === last) continue;
    last = believed.seq;
    if (isFlagged(state)) flagged.push(believed);
    else {
      for (const one of flagged) if (agree(one, believed)) counted.add(one.seq);
      flagged = [];
      counted.add(believed.seq);
    }
  }
  return counted;
};
