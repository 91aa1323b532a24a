import { z } from 'zod';
import { instant, memberId, seq, streamNo, type Instant, type MemberId } from '../../studio/ids.ts';
import type { Reminder, ReminderAbout } from '../../studio/remind/reminder.ts';
import type { Exactly } from '../engine/exactly.ts';

const instantSchema = z.number().transform(instant);
const coat = z.int().positive().transform(seq);

const aboutSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('early'),
    coat,
    plan: instantSchema,
    session: z.string().exactOptional(),
  }),
  z.strictObject({ kind: z.literal('ready'), coat }),
  z.strictObject({ kind: z.literal('peel'), coat, firing: instantSchema }),
  z.strictObject({ kind: z.literal('buckets'), session: z.string(), from: instantSchema }),
  z.strictObject({
    kind: z.literal('unlogged'),
    bucket: z.int().positive().transform(streamNo),
    reading: z.int().positive().transform(seq),
  }),
  z.strictObject({ kind: z.literal('morning'), day: z.string(), by: z.enum(['direct', 'channel']) }),
  z.strictObject({
    kind: z.literal('asked'),
    bucket: z.int().positive().transform(streamNo),
    since: instantSchema,
  }),
  z.strictObject({ kind: z.literal('unreachable'), why: z.enum(['closed', 'gone']) }),
]);
const schema: Exactly<ReminderAbout, typeof aboutSchema> = aboutSchema;

export const readAbout = (json: string): ReminderAbout => schema.parse(JSON.parse(json));
export const writeAbout = (about: ReminderAbout): string => JSON.stringify(schema.parse(about));

interface StoredReminder {
  member_id: MemberId;
  key: string;
  about: string;
  status: string;
  due_at: Instant;
  next_at: Instant;
  good_until: Instant;
  put_off_to: Instant | null;
}

export const reminderOf = (row: StoredReminder): Reminder => ({
  key: row.key,
  member: memberId(row.member_id),
  about: readAbout(row.about),
  dueAt: row.put_off_to ?? row.due_at,
  nextAt: row.next_at,
  goodUntil: row.good_until,
  told: row.status !== 'pending',
  stands: row.status === 'told',
});
