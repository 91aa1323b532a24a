import type { Grams, Millilitres } from '../../glaze/units.ts';
import type { Contents } from './contents.ts';
import type { Instant, MemberId, Seq } from '../ids.ts';

/**
 * What can make readings differ from the logbook. water-out is water that somebody took off; evaporation is nobody's
 * doing.
 */
export const explanations = [
  'water-in',
  'cake',
  'air',
  'water-out',
  'evaporation',
  'dry-in',
  'cake-before',
] as const;
export type Explanation = (typeof explanations)[number];

/** A quantity with its 95 % half-interval. */
export interface WithInterval<T> {
  value: T;
  u95: number;
}

/** An entry that begins or ends a span of time. */
export interface LoggedMoment {
  seq: Seq;
  at: Instant;
}

/** A reading that the logbook did not expect. The expected contents are kept until a second reading settles it. */
export interface Unexpected {
  /** The contents if that reading is wrong, with everything that was logged since. */
  expected: Contents;
  /** The last reading that the logbook expected, and the first that it did not. */
  from: LoggedMoment;
  to: LoggedMoment;
  /** The volume was measured since, so it can be used on its own. */
  volumeSeen: boolean;
  /** The volume was known; otherwise the contents are for one litre. */
  volumeKnown: boolean;
}

/** A change that nobody logged and two readings agree on. */
export interface UnloggedChange {
  /** The likeliest explanation, and those that the numbers cannot tell from it. */
  what: Explanation | 'unknown';
  orElse: Explanation[];
  /** Water that went in (negative: out), for the pail or for each litre. */
  water?: WithInterval<Millilitres>;
  /** Powder that went in (negative: stayed at the bottom), for the pail or for each litre. */
  powder?: WithInterval<Grams>;
  each: 'pail' | 'litre';
  from: LoggedMoment;
  to: LoggedMoment;
  /** The second reading, and who took it. */
  found: LoggedMoment & { by: MemberId };
  /** Water lost in a day, when several readings support it. */
  perDay?: WithInterval<Millilitres> & { readings: number; since: Instant };
}
