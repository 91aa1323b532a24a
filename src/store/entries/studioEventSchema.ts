import { z } from 'zod';
import { materialCautions } from '../../glaze/materials/materialTable.ts';
import { weekdays } from '../../studio/time/openingHours.ts';
import type { StudioEvent } from '../../studio/settings/studio.ts';
import type { Exactly } from '../engine/exactly.ts';
import {
  aDuration,
  aFraction,
  aMember,
  anInstant,
  aSeq,
  cupKind,
  inCelsius,
  inGrams,
  inGravity,
  number,
  text,
  whether,
} from './scalarSchemas.ts';

const opening = z.strictObject({ opens: number, closes: number });
const dayHours = z.union([opening, z.literal('closed')]);

const studioEvent = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('name'), name: text }),
  z.strictObject({ kind: z.literal('zone'), zone: text }),
  z.strictObject({ kind: z.literal('units'), units: z.enum(['metric', 'us', 'imperial']) }),
  z.strictObject({
    kind: z.literal('vessel'),
    vessel: z.strictObject({
      name: text,
      tare: inGrams,
      water: inGrams,
      temperature: inCelsius,
      scaleStep: inGrams,
    }),
  }),
  z.strictObject({ kind: z.literal('cup'), cup: z.strictObject({ name: text, kind: cupKind }) }),
  z.strictObject({ kind: z.literal('water'), hard: whether }),
  z.strictObject({
    kind: z.literal('recipe'),
    recipe: z.strictObject({
      name: text,
      lines: z.array(
        z.strictObject({
          material: text,
          amount: number,
          addition: whether,
          gravity: inGravity.exactOptional(),
        }),
      ),
    }),
  }),
  z.strictObject({
    kind: z.literal('material'),
    material: z.strictObject({
      name: text,
      like: text.exactOptional(),
      gravity: inGravity,
      cautions: z.array(z.enum(materialCautions)),
    }),
  }),
  z.strictObject({ kind: z.literal('keeper'), member: aMember, keeper: whether }),
  z.strictObject({ kind: z.literal('sure'), chance: number }),
  z.strictObject({ kind: z.literal('scoop'), holds: inGrams }),
  z.strictObject({ kind: z.literal('deflocculant'), what: text }),
  z.strictObject({ kind: z.literal('keeper-role'), role: text }),
  z.strictObject({ kind: z.literal('channel'), channel: text }),
  z.strictObject({
    kind: z.literal('hours'),
    week: z.strictObject({
      sunday: dayHours.exactOptional(),
      monday: dayHours.exactOptional(),
      tuesday: dayHours.exactOptional(),
      wednesday: dayHours.exactOptional(),
      thursday: dayHours.exactOptional(),
      friday: dayHours.exactOptional(),
      saturday: dayHours.exactOptional(),
    }),
  }),
  z.strictObject({ kind: z.literal('closures'), days: z.array(text), closed: whether }),
  z.strictObject({
    kind: z.literal('drying'),
    minimumHours: number.exactOptional(),
    night: whether.exactOptional(),
    temperature: inCelsius.exactOptional(),
    humidity: aFraction.exactOptional(),
  }),
  z.strictObject({
    kind: z.literal('session'),
    session: z.strictObject({ name: text, day: z.enum(weekdays), hours: opening }),
  }),
  z.strictObject({ kind: z.literal('session-off'), name: text }),
  z.strictObject({
    kind: z.literal('reminders'),
    lead: aDuration.exactOptional(),
    quiet: z.union([z.strictObject({ from: number, until: number }), z.literal('none')]).exactOptional(),
  }),
  z.strictObject({
    kind: z.literal('morning'),
    morning: z.strictObject({ at: number, by: z.enum(['direct', 'channel']) }).exactOptional(),
  }),
  z.strictObject({ kind: z.literal('firing'), at: anInstant.exactOptional() }),
  z.strictObject({ kind: z.literal('reach'), member: aMember, by: z.enum(['direct', 'channel']) }),
  z.strictObject({ kind: z.literal('undo'), of: aSeq }),
]);

export const studioEvents: Exactly<StudioEvent, typeof studioEvent> = studioEvent;
