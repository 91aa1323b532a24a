import { z } from 'zod';
import { millimetres } from '../../glaze/units.ts';
import { instant, seq, streamNo } from '../../studio/ids.ts';
import { resists } from '../../studio/resist/overnight.ts';
import { prepSteps, surfaces, underglazes, type PieceEvent } from '../../studio/piece/pieceEvent.ts';
import type { Exactly } from '../engine/exactly.ts';

const aSeq = z.int().positive().transform(seq);
const aStream = z.int().transform(streamNo);
const inMillimetres = z.number().transform(millimetres);
const steps = z.array(z.enum(prepSteps));

const pieceEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('piece'),
    piece: z.strictObject({
      name: z.string(),
      bucket: aStream,
      second: aStream.exactOptional(),
      surface: z.enum(surfaces),
      underglaze: z.enum(underglazes),
      resist: z.enum(resists).exactOptional(),
      body: z.string().exactOptional(),
      absorption: z.number().exactOptional(),
      cone: z.number().exactOptional(),
      wall: inMillimetres.exactOptional(),
      thickness: inMillimetres.exactOptional(),
      runny: z.boolean().exactOptional(),
      plannedFor: z.number().transform(instant).exactOptional(),
    }),
    steps,
  }),
  z.strictObject({ kind: z.literal('done'), of: aSeq, steps }),
  z.strictObject({ kind: z.literal('undo'), of: aSeq }),
]);

export const pieceEvents: Exactly<PieceEvent, typeof pieceEvent> = pieceEvent;
