import { z } from 'zod';
import type { Selectable } from 'kysely';
import type { Reminder, ReminderAbout } from '../../studio/remind/reminder.ts';
import type { Exactly } from '../engine/exactly.ts';
import { anInstant, aSeq, aStream, text } from '../entries/scalarSchemas.ts';
import type { Tables } from '../migrations/tables.ts';

const aboutSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('early'), coat: aSeq, plan: anInstant, session: text.exactOptional() }),
  z.strictObject({ kind: z.literal('ready'), coat: aSeq }),
  z.strictObject({ kind: z.literal('peel'), coat: aSeq, firing: anInstant }),
  z.strictObject({ kind: z.literal('buckets'), session: text, from: anInstant }),
  z.strictObject({ kind: z.literal('unlogged'), bucket: aStream, reading: aSeq }),
  z.strictObject({ kind: z.literal('morning'), day: text, by: z.enum(['direct', 'channel']) }),
  z.strictObject({ kind: z.literal('asked'), bucket: aStream, since: anInstant }),
  z.strictObject({ kind: z.literal('unreachable'), why: z.enum(['closed', 'gone']) }),
]);
const schema: Exactly<ReminderAbout, typeof aboutSchema> = aboutSchema;

export const readAbout = (json: string): ReminderAbout => schema.parse(JSON.parse(json));
export const writeAbout = (about: ReminderAbout): string => JSON.stringify(schema.parse(about));

export const reminderOf = (row: Selectable<Tables['reminders']>): Reminder => ({
  key: row.key,
  member: row.member_id,
  about: readAbout(row.about),
  dueAt: row.put_off_to ?? row.due_at,
  nextAt: row.next_at,
  goodUntil: row.good_until,
  told: row.status !== 'pending',
  stands: row.status === 'told',
});
