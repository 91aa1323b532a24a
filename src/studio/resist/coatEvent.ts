import type { Celsius, Fraction } from '../../glaze/units.ts';
import type { Instant, Seq } from '../ids.ts';
import type { Resist } from './overnight.ts';

export const coatEnds = ['glazed', 'peeled', 'washed'] as const;
/** What became of a resist coat: glazed over, peeled off, or washed off to begin anew. */
export type CoatEnd = (typeof coatEnds)[number];

export type CoatEvent =
  | {
      kind: 'on';
      resist: Resist;
      pieces: string;
      plannedFor?: Instant;
      /** Of the room that it dries in. */
      temperature?: Celsius;
      humidity?: Fraction;
      /** The coat on which it is a further layer. */
      over?: Seq;
    }
  | { kind: 'off'; of: Seq; how: CoatEnd }
  /** Its member says that it is somebody else's. */
  | { kind: 'not-mine'; of: Seq }
  | { kind: 'undo'; of: Seq };
