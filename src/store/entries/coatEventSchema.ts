import { z } from 'zod';
import { celsius, fraction } from '../../glaze/units.ts';
import { coatEnds, type CoatEvent } from '../../studio/resist/coatEvent.ts';
import { instant, seq } from '../../studio/ids.ts';
import { resists } from '../../studio/resist/overnight.ts';
import type { Exactly } from '../engine/exactly.ts';

const aSeq = z.int().positive().transform(seq);

const coatEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('on'),
    resist: z.enum(resists),
    pieces: z.string(),
    plannedFor: z.number().transform(instant).exactOptional(),
    temperature: z.number().transform(celsius).exactOptional(),
    humidity: z.number().transform(fraction).exactOptional(),
    over: aSeq.exactOptional(),
  }),
  z.strictObject({ kind: z.literal('off'), of: aSeq, how: z.enum(coatEnds) }),
  z.strictObject({ kind: z.literal('not-mine'), of: aSeq }),
  z.strictObject({ kind: z.literal('undo'), of: aSeq }),
]);

export const coatEvents: Exactly<CoatEvent, typeof coatEvent> = coatEvent;
