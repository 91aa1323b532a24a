import { z } from 'zod';
import {
  flowLooks,
  holdCauses,
  observations,
  stirTools,
  type BucketEvent,
} from '../../studio/bucket/bucketEvent.ts';
import { bucketCautions, bucketUses } from '../../studio/settings/bucketSettings.ts';
import type { Exactly } from '../engine/exactly.ts';
import {
  aDuration,
  aSeq,
  aStream,
  cupKind,
  inCelsius,
  inGrams,
  inGravity,
  inMillilitres,
  inMillimetres,
  inSeconds,
  number,
  text,
  whether,
} from './scalarSchemas.ts';

export const bucketSettings = z.strictObject({
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
  cone: number.exactOptional(),
  atmosphere: text.exactOptional(),
  bodies: text.exactOptional(),
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

/** How long a cup took to run out. */
export const cupTime = z.strictObject({
  cup: text,
  kind: cupKind,
  seconds: z.union([inSeconds, z.literal('wont-run')]),
});

/** A test tile, its coat measured dry. */
export const tile = z.strictObject({
  seconds: inSeconds,
  thickness: inMillimetres,
  absorption: number.exactOptional(),
  body: text.exactOptional(),
  gravity: inGravity.exactOptional(),
});

const undo = z.strictObject({ kind: z.literal('undo'), of: aSeq });
const observationsSchema = z.array(z.enum(observations));

const repeated = { count: number, squares: number };

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
      .strictObject({
        value: inGravity,
        u95: number,
        by: z.enum(['weight', 'stated', 'hydrometer']),
        vessel: text.exactOptional(),
      })
      .exactOptional(),
    flow: cupTime.exactOptional(),
    look: z.enum(flowLooks).exactOptional(),
    gap: inMillimetres.exactOptional(),
    level: inMillilitres.exactOptional(),
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
    look: z.enum(flowLooks).exactOptional(),
    seen: observationsSchema,
  }),
  z.strictObject({ kind: z.literal('sieve'), mesh: number.exactOptional() }),
  z.strictObject({ kind: z.literal('tile'), ...tile.shape }),
  z.strictObject({ kind: z.literal('hold'), cause: z.enum(holdCauses), why: text }),
  z.strictObject({ kind: z.literal('release') }),
  z.strictObject({ kind: z.literal('retire') }),
  z.strictObject({
    kind: z.literal('learned'),
    days: number,
    counts: z.strictObject({
      water: number,
      powder: number,
      waterOut: number,
      salt: number,
      blind: number,
      looks: number,
    }),
    vessels: z.array(z.strictObject({ vessel: text.exactOptional(), ...repeated })),
    cups: z.array(z.strictObject({ cup: text, ...repeated })),
  }),
  undo,
]);

export const bucketEvents: Exactly<BucketEvent, typeof bucketEvent> = bucketEvent;
