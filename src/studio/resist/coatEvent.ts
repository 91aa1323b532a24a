import type { Celsius, Fraction } from '../../glaze/units.ts';
import type { Instant, Seq } from '../ids.ts';
import type { Resist } from './overnight.ts';

export const coatEnds = ['glazed', 'peeled', 'washed'] as const;
/** How a resist coat ended: glazed over, peeled off, or washed off to start again. */
export type CoatEnd = (typeof coatEnds)[number];

export type CoatEvent =
  | {
      kind: 'on';
      resist: Resist;
      pieces: string;
      plannedFor?: Instant;
      /** Temperature of the room that it dries in. */
      temperature?: Celsius;
      humidity?: Fraction;
      /** The coat under this one, as a further layer. */
      over?: Seq;
    }
  | { kind: 'off'; of: Seq; how: CoatEnd }
  /** The member says that the coat belongs to somebody else. */
  | { kind: 'not-mine'; of: Seq }
  | { kind: 'undo'; of: Seq };
