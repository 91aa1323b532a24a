import { z } from 'zod';
import { bisques } from '../../studio/piece/bisque.ts';
import { faults, type FiredEvent } from '../../studio/firing/firedEvent.ts';
import { instant, seq, streamNo } from '../../studio/ids.ts';
import type { Exactly } from '../engine/exactly.ts';

const aSeq = z.int().positive().transform(seq);
const aStream = z.int().transform(streamNo);
const anInstant = z.number().transform(instant);

const firedEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('fired'),
    fired: z.strictObject({
      bucket: aStream,
      over: aStream.exactOptional(),
      faults: z.array(z.enum(faults)),
      pieces: z.number().exactOptional(),
      faulty: z.number().exactOptional(),
      dipped: z.strictObject({ from: anInstant, to: anInstant }).exactOptional(),
      plan: aSeq.exactOptional(),
      coat: aSeq.exactOptional(),
      body: z.string().exactOptional(),
      cone: z.number().exactOptional(),
      kiln: z.string().exactOptional(),
      bisque: z.enum(bisques).exactOptional(),
      bisqueCone: z.number().exactOptional(),
    }),
  }),
  z.strictObject({ kind: z.literal('undo'), of: aSeq }),
]);

export const firedEvents: Exactly<FiredEvent, typeof firedEvent> = firedEvent;
