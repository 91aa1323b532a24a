import { z } from 'zod';
import { bisques } from '../../studio/piece/bisque.ts';
import { faults, type FiredEvent } from '../../studio/firing/firedEvent.ts';
import type { Exactly } from '../engine/exactly.ts';
import { anInstant, aSeq, aStream, number, text } from './scalarSchemas.ts';

const firedEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('fired'),
    fired: z.strictObject({
      bucket: aStream,
      over: aStream.exactOptional(),
      faults: z.array(z.enum(faults)),
      pieces: number.exactOptional(),
      faulty: number.exactOptional(),
      dipped: z.strictObject({ from: anInstant, to: anInstant }).exactOptional(),
      plan: aSeq.exactOptional(),
      coat: aSeq.exactOptional(),
      body: text.exactOptional(),
      cone: number.exactOptional(),
      kiln: text.exactOptional(),
      bisque: z.enum(bisques).exactOptional(),
      bisqueCone: number.exactOptional(),
    }),
  }),
  z.strictObject({ kind: z.literal('undo'), of: aSeq }),
]);

export const firedEvents: Exactly<FiredEvent, typeof firedEvent> = firedEvent;
