import { z } from 'zod';
import { flowCups } from '../../glaze/flow/flowCup.ts';
import type {
  Celsius,
  Fraction,
  Grams,
  Gravity,
  Millilitres,
  Millimetres,
  Seconds,
} from '../../glaze/units.ts';
import type { Duration, Instant, MemberId, Seq, StreamNo } from '../../studio/ids.ts';

/** A unit, or what an id is of, stands in the type alone: a transform would cost time for each number read. */
const a = <T extends number | string>(plain: z.ZodType<number | string>) => plain as z.ZodType<T>;

export const number = z.number();
export const text = z.string();
export const whether = z.boolean();
export const inGravity = a<Gravity>(number);
export const inGrams = a<Grams>(number);
export const inMillilitres = a<Millilitres>(number);
export const inMillimetres = a<Millimetres>(number);
export const inCelsius = a<Celsius>(number);
export const inSeconds = a<Seconds>(number);
export const aFraction = a<Fraction>(number);
export const aDuration = a<Duration>(number);
export const anInstant = a<Instant>(number);
export const aSeq = a<Seq>(z.int().positive());
export const aStream = a<StreamNo>(z.int());
export const aMember = a<MemberId>(text);
export const cupKind = z.enum([...flowCups.map(({ kind }) => kind), 'own']);
