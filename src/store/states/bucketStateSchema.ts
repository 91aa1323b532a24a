import { z } from 'zod';
import { flowLooks, holdCauses } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { explanations } from '../../studio/contents/unloggedChange.ts';
import { bucketCautions } from '../../studio/settings/bucketSettings.ts';
import type { Exactly } from '../engine/exactly.ts';
import { bucketSettings, cupTime, tile } from '../entries/bucketEventSchema.ts';
import {
  aDuration,
  aMember,
  anInstant,
  aSeq,
  aStream,
  inCelsius,
  inGrams,
  inGravity,
  inMillilitres,
  number,
  text,
  whether,
} from '../entries/scalarSchemas.ts';

const since = anInstant;
const mark = z.strictObject({ seq: aSeq, at: anInstant });
const measuredGravity = z.strictObject({ value: inGravity, u95: number, at: anInstant, seq: aSeq });
const someWater = z.strictObject({ value: inMillilitres, u95: number });
const somePowder = z.strictObject({ value: inGrams, u95: number });

const contents = z.strictObject({
  water: inGrams,
  solids: inGrams,
  covariance: z.strictObject({ waterWater: number, waterSolids: number, solidsSolids: number }),
});

const repeats = z.record(text, z.strictObject({ count: number, squares: number }));

const belief = z.strictObject({
  at: anInstant,
  days: number,
  instruments: z.array(text),
  components: z.array(
    z.strictObject({
      weight: number,
      mean: z.array(number),
      covariance: z.array(number),
      counts: z.array(number),
    }),
  ),
  warmth: z.strictObject({ at: anInstant, celsius: inCelsius }).exactOptional(),
  loosened: anInstant.exactOptional(),
  cupKind: text.exactOptional(),
  borneOut: aSeq.exactOptional(),
  visit: z
    .strictObject({
      at: anInstant,
      readings: number,
      weighed: whether,
      timed: whether,
      dosed: z.literal(true).exactOptional(),
      look: z.enum(flowLooks).exactOptional(),
      by: aMember.exactOptional(),
      reads: z.record(text, z.strictObject({ mean: number, count: number })).exactOptional(),
    })
    .exactOptional(),
  repeats: repeats.exactOptional(),
  others: z.strictObject({ days: number, counts: z.array(number), repeats }).exactOptional(),
});

const unloggedChange = z.strictObject({
  what: z.enum([...explanations, 'unknown']),
  orElse: z.array(z.enum(explanations)),
  water: someWater.exactOptional(),
  powder: somePowder.exactOptional(),
  each: z.enum(['pail', 'litre']),
  from: mark,
  to: mark,
  found: z.strictObject({ ...mark.shape, by: aMember }),
  perDay: z.strictObject({ ...someWater.shape, readings: number, since }).exactOptional(),
});

const flowPoint = z.strictObject({
  ...cupTime.shape,
  doses: number,
  salt: inGrams,
  percent: number,
  gravity: inGravity,
});

const loosenPoint = z.strictObject({ ...cupTime.shape, doses: number, steps: number, gravity: inGravity });

const state = z.strictObject({
  no: aStream,
  foldedTo: anInstant,
  seq: aSeq,
  settings: bucketSettings,
  retired: whether,
  hold: z
    .strictObject({ cause: z.enum(holdCauses), why: text, by: aMember, since, seq: aSeq.exactOptional() })
    .exactOptional(),
  brought: z.array(z.strictObject({ seq: aSeq, cautions: z.array(z.enum(bucketCautions)) })).exactOptional(),
  apart: aSeq.exactOptional(),
  cake: z.strictObject({ since }).exactOptional(),
  unsieved: z.strictObject({ what: z.enum(['lumps', 'skin', 'frozen']), since }).exactOptional(),
  voided: z
    .strictObject({ by: z.enum(['cake', 'sieved', 'frozen', 'contaminated']), at: anInstant })
    .exactOptional(),
  sieved: z.strictObject({ at: anInstant, mesh: number.exactOptional() }).exactOptional(),
  clearWater: z.strictObject({ since }).exactOptional(),
  stir: z
    .strictObject({
      at: anInstant,
      minutes: number.exactOptional(),
      mixedAt: anInstant.exactOptional(),
      longAt: anInstant.exactOptional(),
      addedSince: z.literal(true).exactOptional(),
    })
    .exactOptional(),
  rests: z
    .strictObject({
      longest: aDuration,
      count: number,
      counted: anInstant.exactOptional(),
      shortest: aDuration.exactOptional(),
    })
    .exactOptional(),
  believed: measuredGravity.exactOptional(),
  unbelieved: measuredGravity.exactOptional(),
  together: z.strictObject({ value: inGravity, u95: number, count: number }).exactOptional(),
  restedFlow: z.strictObject({ at: anInstant, flow: cupTime.exactOptional() }).exactOptional(),
  byHydrometer: number.exactOptional(),
  contents: contents.exactOptional(),
  unexpected: z
    .strictObject({ expected: contents, from: mark, to: mark, volumeSeen: whether, volumeKnown: whether })
    .exactOptional(),
  unlogged: z.array(unloggedChange).exactOptional(),
  carried: number,
  drift: z.array(z.strictObject({ at: anInstant, value: number, sd: number })).exactOptional(),
  volumeAt: anInstant.exactOptional(),
  predicted: z.strictObject({ value: inGravity, u95: number }).exactOptional(),
  moved: number,
  unknownSince: z.array(aSeq),
  efflux: z
    .strictObject({
      ...cupTime.shape,
      at: anInstant,
      temperature: inCelsius.exactOptional(),
      stirredSince: z.literal(true).exactOptional(),
    })
    .exactOptional(),
  look: z
    .strictObject({ look: z.enum(flowLooks), at: anInstant, stirredSince: z.literal(true).exactOptional() })
    .exactOptional(),
  tiles: z.array(z.strictObject({ ...tile.shape, at: anInstant })).exactOptional(),
  belief,
  flocculant: z.strictObject({
    heptahydrate: inGrams,
    doses: number,
    lastAt: anInstant.exactOptional(),
    stirredIn: anInstant.exactOptional(),
    unknown: whether,
    flow: z.array(flowPoint).exactOptional(),
  }),
  deflocculant: z
    .strictObject({
      steps: number,
      doses: number,
      flow: z.array(loosenPoint).exactOptional(),
      right: number.exactOptional(),
    })
    .exactOptional(),
});

const bucketState: Exactly<BucketState, typeof state> = state;

/** Each state is read once a start: compiling the schema would take longer than it saves. */
const isBucketState = (value: unknown): value is BucketState =>
  bucketState.safeParse(value, { jitless: true }).success;

/** A cached state as it is stored, its keys in their order; undefined of what is no state, which is folded anew. */
export const readState = (json: string | null): BucketState | undefined => {
  try {
    const value: unknown = json === null ? undefined : JSON.parse(json);
    return isBucketState(value) ? value : undefined;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
};
