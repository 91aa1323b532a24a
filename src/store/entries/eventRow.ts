import { z } from 'zod';
import { flowCups } from '../../glaze/flow/flowCup.ts';
import { celsius, grams, gravity, millilitres, millimetres, seconds } from '../../glaze/units.ts';
import {
  flowLooks,
  holdCauses,
  observations,
  stirTools,
  type BucketEvent,
} from '../../studio/bucket/bucketEvent.ts';
import { bucketCautions, bucketUses } from '../../studio/settings/bucketSettings.ts';
import type { CoatEvent } from '../../studio/resist/coatEvent.ts';
import type { FiredEvent } from '../../studio/firing/firedEvent.ts';
import type { PieceEvent } from '../../studio/piece/pieceEvent.ts';
import {
  coatStream,
  duration,
  firedStream,
  pieceStream,
  seq,
  streamNo,
  studioStream,
  type StreamNo,
} from '../../studio/ids.ts';
import type { LoggedEvent } from '../../studio/logbook/ports.ts';
import type { StudioEvent } from '../../studio/settings/studio.ts';
import { coatEvents } from './coatEventSchema.ts';
import { firedEvents } from './firedEventSchema.ts';
import { pieceEvents } from './pieceEventSchema.ts';
import type { Exactly } from '../engine/exactly.ts';
import { studioEvents } from './studioEventSchema.ts';

const number = z.number();
const text = z.string();
const whether = z.boolean();
const inGravity = number.transform(gravity);
const inGrams = number.transform(grams);
const inMillilitres = number.transform(millilitres);
const inMillimetres = number.transform(millimetres);
const inCelsius = number.transform(celsius);
const inSeconds = number.transform(seconds);
const aDuration = number.transform(duration);
const aSeq = z.int().positive().transform(seq);
const aStream = z.int().transform(streamNo);
const cupKind = z.enum([...flowCups.map(({ kind }) => kind), 'own']);

const bucketSettings = z.strictObject({
  name: text,
  nick: text.exactOptional(),
  use: z.enum(bucketUses),
  pail: inMillilitres.exactOptional(),
  shape: z.strictObject({ bottom: inMillimetres, top: inMillimetres, height: inMillimetres }).exactOptional(),
  gravity: z.strictObject({ low: inGravity, high: inGravity }).exactOptional(),
  efflux: z.strictObject({ low: inSeconds, high: inSeconds }).exactOptional(),
  cup: text.exactOptional(),
  solids: inGravity,
  restLimit: aDuration,
  shelfLife: aDuration,
  mesh: z.union([number, z.literal('never')]),
  cautions: z.array(z.enum(bucketCautions)),
  recipe: text.exactOptional(),
  glaze: text.exactOptional(),
});
const someSettings = z.strictObject({
  ...bucketSettings.shape,
  name: bucketSettings.shape.name.exactOptional(),
  use: bucketSettings.shape.use.exactOptional(),
  solids: bucketSettings.shape.solids.exactOptional(),
  restLimit: bucketSettings.shape.restLimit.exactOptional(),
  shelfLife: bucketSettings.shape.shelfLife.exactOptional(),
  mesh: bucketSettings.shape.mesh.exactOptional(),
  cautions: bucketSettings.shape.cautions.exactOptional(),
});
const volume = inMillilitres.exactOptional();
const mass = inGrams.exactOptional();

const addedSchema = z.discriminatedUnion('what', [
  z.strictObject({ what: z.literal('water'), volume }),
  z.strictObject({ what: z.literal('draw-off'), volume }),
  z.strictObject({ what: z.literal('dry'), mass }),
  z.strictObject({ what: z.literal('flocculant'), volume, heptahydrate: mass }),
  z.strictObject({ what: z.literal('deflocculant'), volume, mass }),
  z.strictObject({
    what: z.literal('glaze'),
    volume,
    gravity: inGravity.exactOptional(),
    gravityU: number.exactOptional(),
    from: aStream.exactOptional(),
    own: z.literal(true).exactOptional(),
    heptahydrate: mass,
  }),
  z.strictObject({ what: z.literal('taken'), volume, to: aStream.exactOptional() }),
  z.strictObject({ what: z.literal('other'), name: text.exactOptional(), volume, mass }),
]);

const brings = z.strictObject({
  cautions: z.array(z.enum(bucketCautions)),
  hold: z.strictObject({ cause: z.enum(holdCauses), why: text }).exactOptional(),
  foreign: z.literal(true).exactOptional(),
});

const undo = z.strictObject({ kind: z.literal('undo'), of: aSeq });
const observationsSchema = z.array(z.enum(observations));

const bucketEvent = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('setup'), settings: bucketSettings, volume }),
  z.strictObject({
    kind: z.literal('change'),
    settings: someSettings,
    cleared: z.array(bucketSettings.keyof()).exactOptional(),
    volume,
  }),
  z.strictObject({
    kind: z.literal('reading'),
    gravity: z
      .strictObject({ value: inGravity, u95: number, by: z.enum(['weight', 'stated', 'hydrometer']) })
      .exactOptional(),
    flow: z
      .strictObject({
        cup: text,
        kind: cupKind,
        seconds: z.union([inSeconds, z.literal('wont-run')]),
      })
      .exactOptional(),
    look: z.enum(flowLooks).exactOptional(),
    gap: inMillimetres.exactOptional(),
    temperature: inCelsius.exactOptional(),
    stirred: whether.exactOptional(),
    seen: observationsSchema,
  }),
  z.strictObject({
    kind: z.literal('addition'),
    added: addedSchema,
    remake: whether.exactOptional(),
    brings: brings.exactOptional(),
  }),
  z.strictObject({
    kind: z.literal('stir'),
    minutes: number.exactOptional(),
    tool: z.enum(stirTools).exactOptional(),
    seen: observationsSchema,
  }),
  z.strictObject({ kind: z.literal('sieve'), mesh: number.exactOptional() }),
  z.strictObject({
    kind: z.literal('tile'),
    seconds: inSeconds,
    thickness: inMillimetres,
    absorption: number.exactOptional(),
    body: text.exactOptional(),
    gravity: inGravity.exactOptional(),
  }),
  z.strictObject({ kind: z.literal('hold'), cause: z.enum(holdCauses), why: text }),
  z.strictObject({ kind: z.literal('release') }),
  z.strictObject({ kind: z.literal('retire') }),
  undo,
]);

const bucketEvents: Exactly<BucketEvent, typeof bucketEvent> = bucketEvent;

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

/** The event as stored. One that could not be read back is a bug, and throws. */
export const writeEvent = (stream: StreamNo, event: LoggedEvent): string =>
  JSON.stringify(schemaOf(stream).parse(event));
