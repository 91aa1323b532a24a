import { hours, later, type Instant, type MemberId, type StreamNo } from '../ids.ts';
import type { WantedReminder } from './reminder.ts';

/** Later than this nobody stands at the bucket any more: common practice. */
const usefulFor = hours(12);

/** To look at a bucket again at a time that a member asked for: one for each bucket. */
export const askedReminder = (
  member: MemberId,
  bucket: StreamNo,
  at: Instant,
  now: Instant,
): WantedReminder => ({
  key: `asked-${bucket}`,
  member,
  about: { kind: 'asked', bucket, since: now },
  dueAt: at,
  goodUntil: later(at, usefulFor),
});
