import type { Grams, Millilitres } from '../../glaze/units.ts';
import type { Contents } from './contents.ts';
import type { Instant, MemberId, Seq } from '../ids.ts';

/** What makes readings differ from the logbook; water-out is water taken off by somebody, evaporation by nobody. */
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
export interface Within<T> {
  value: T;
  u95: number;
}

/** An entry as the end of a span of time. */
export interface Mark {
  seq: Seq;
  at: Instant;
}

/** A reading that the logbook did not expect: what it expected goes along until a second reading settles it. */
export interface Unexpected {
  /** What the pail would hold if that reading were wrong, moved by all that is logged since. */
  expected: Contents;
  /** The last reading that the logbook did expect, and the first that it did not. */
  from: Mark;
  to: Mark;
  /** How full the pail is was measured since, so that it tells on its own. */
  volumeSeen: boolean;
  /** What the pail held was known; else it is reckoned for one litre of it. */
  volumeKnown: boolean;
}

/** What went into a bucket, or out of it, by two readings that agree, and nobody logged. */
export interface UnloggedChange {
  /** The likeliest name for it, and those that the numbers cannot tell from it. */
  what: Explanation | 'unknown';
  orElse: Explanation[];
  /** Water that went in (negative: out), in the pail or in each litre. */
  water?: Within<Millilitres>;
  /** Powder that went in, or was left at the bottom; likewise. */
  powder?: Within<Grams>;
  each: 'pail' | 'litre';
  from: Mark;
  to: Mark;
  /** The second reading, and who took it. */
  found: Mark & { by: MemberId };
  /** Water lost in a day, when several readings carry it. */
  perDay?: Within<Millilitres> & { readings: number; since: Instant };
}
