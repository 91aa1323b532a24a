import type { Celsius, Fraction } from '../../glaze/units.ts';
import type { EntryId, Instant, MemberId, Seq } from '../ids.ts';
import type { Resist } from './overnight.ts';
import { nameKey } from '../../text/normalizedName.ts';

/** A resist coat that is still on its pieces. */
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
  /** The coats under this one. */
  below: Seq[];
  disowned?: true;
}

/** Whether two descriptions mean the same pieces: `3 bowls` and `3 Bowls`. */
export const areSamePieces = (one: string, other: string): boolean => nameKey(one) === nameKey(other);
