import type { z } from 'zod';
import type { BucketEvent } from '../../studio/bucket/bucketEvent.ts';
import type { CoatEvent } from '../../studio/resist/coatEvent.ts';
import type { FiredEvent } from '../../studio/firing/firedEvent.ts';
import type { PieceEvent } from '../../studio/piece/pieceEvent.ts';
import { coatStream, firedStream, pieceStream, studioStream, type StreamNo } from '../../studio/ids.ts';
import type { LoggedEvent } from '../../studio/logbook/ports.ts';
import type { StudioEvent } from '../../studio/settings/studio.ts';
import { bucketEvents } from './bucketEventSchema.ts';
import { coatEvents } from './coatEventSchema.ts';
import { firedEvents } from './firedEventSchema.ts';
import { pieceEvents } from './pieceEventSchema.ts';
import { studioEvents } from './studioEventSchema.ts';

const schemaOf = (stream: StreamNo): z.ZodType<LoggedEvent> => {
  if (stream > studioStream) return bucketEvents;
  if (stream === pieceStream) return pieceEvents;
  if (stream === firedStream) return firedEvents;
  return stream === coatStream ? coatEvents : studioEvents;
};

export const readBucketEvent = (json: string): BucketEvent => bucketEvents.parse(JSON.parse(json));
export const readStudioEvent = (json: string): StudioEvent => studioEvents.parse(JSON.parse(json));
export const readCoatEvent = (json: string): CoatEvent => coatEvents.parse(JSON.parse(json));
export const readPieceEvent = (json: string): PieceEvent => pieceEvents.parse(JSON.parse(json));
export const readFiredEvent = (json: string): FiredEvent => firedEvents.parse(JSON.parse(json));
export const readEvent = (stream: StreamNo, json: string): LoggedEvent =>
  schemaOf(stream).parse(JSON.parse(json));

/** The event as JSON. Throws when it could not be read back, which is a bug. */
export const writeEvent = (stream: StreamNo, event: LoggedEvent): string =>
  JSON.stringify(schemaOf(stream).parse(event));
