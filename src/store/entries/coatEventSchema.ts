import { z } from 'zod';
import { coatEnds, type CoatEvent } from '../../studio/resist/coatEvent.ts';
import { resists } from '../../studio/resist/overnight.ts';
import type { Exactly } from '../engine/exactly.ts';
import { aFraction, anInstant, aSeq, inCelsius, text } from './scalarSchemas.ts';

const coatEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('on'),
    resist: z.enum(resists),
    pieces: text,
    plannedFor: anInstant.exactOptional(),
    temperature: inCelsius.exactOptional(),
    humidity: aFraction.exactOptional(),
    over: aSeq.exactOptional(),
  }),
  z.strictObject({ kind: z.literal('off'), of: aSeq, how: z.enum(coatEnds) }),
  z.strictObject({ kind: z.literal('not-mine'), of: aSeq }),
  z.strictObject({ kind: z.literal('undo'), of: aSeq }),
]);

export const coatEvents: Exactly<CoatEvent, typeof coatEvent> = coatEvent;
