import { z } from 'zod';
import { resists } from '../../studio/resist/overnight.ts';
import { prepSteps, surfaces, underglazes, type PieceEvent } from '../../studio/piece/pieceEvent.ts';
import type { Exactly } from '../engine/exactly.ts';
import { anInstant, aSeq, aStream, inMillimetres, number, text, whether } from './scalarSchemas.ts';

const steps = z.array(z.enum(prepSteps));

const pieceEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('piece'),
    piece: z.strictObject({
      name: text,
      bucket: aStream,
      second: aStream.exactOptional(),
      surface: z.enum(surfaces),
      underglaze: z.enum(underglazes),
      resist: z.enum(resists).exactOptional(),
      body: text.exactOptional(),
      absorption: number.exactOptional(),
      cone: number.exactOptional(),
      wall: inMillimetres.exactOptional(),
      thickness: inMillimetres.exactOptional(),
      runny: whether.exactOptional(),
      plannedFor: anInstant.exactOptional(),
    }),
    steps,
  }),
  z.strictObject({ kind: z.literal('done'), of: aSeq, steps }),
  z.strictObject({ kind: z.literal('undo'), of: aSeq }),
]);

export const pieceEvents: Exactly<PieceEvent, typeof pieceEvent> = pieceEvent;
