import type { Celsius, Fraction } from '../../glaze/units.ts';
import type { EntryId, Instant, MemberId, Seq } from '../ids.ts';
import type { Resist } from './overnight.ts';

/** A resist coat that is on its pieces still. */
export interface ResistCoat {
  id: EntryId;
  seq: Seq;
  by: MemberId;
  resist: Resist;
  pieces: string;
  onAt: Instant;
  loggedAt: Instant;
  plannedFor?: Instant;
  temperature?: Celsius;
  humidity?: Fraction;
  /** The coats on which it is a further layer. */
  below: Seq[];
  disowned?: true;
}

const folded = (pieces: string): string =>
  pieces
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');

/** Whether two people's words name the same pieces: `3 bowls` and `3 Bowls`. */
export const areSamePieces = (one: string, other: string): boolean => folded(one) === folded(other);
