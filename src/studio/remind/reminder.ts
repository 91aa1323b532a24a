import type { ReachBy } from '../settings/studio.ts';
import type { EntryId, Instant, MemberId, Seq, StreamNo } from '../ids.ts';

export type ReminderAbout =
  /** The coat will not be dry at the planned time or session. */
  | { kind: 'early'; coat: Seq; plan: Instant; session?: string }
  | { kind: 'ready'; coat: Seq }
  /** Latex is still on, and a firing is near. */
  | { kind: 'peel'; coat: Seq; firing: Instant }
  /** Buckets need a stir or a reading before a session. */
  | { kind: 'buckets'; session: string; from: Instant }
  /** A change that nobody logged: the bucket, and the first of the two readings that show it. */
  | { kind: 'unlogged'; bucket: StreamNo; reading: Seq }
  /** The round, on the morning of a day: to a keeper, or to everybody in the channel. */
  | { kind: 'morning'; day: string; by: ReachBy }
  /** A member asked to be told, to look at a bucket again. */
  | { kind: 'asked'; bucket: StreamNo; since: Instant }
  /** A reminder could not be delivered: the member takes no messages, or the channel is gone. */
  | { kind: 'unreachable'; why: 'closed' | 'gone' };

/** A reminder that the logbook calls for. */
export interface WantedReminder {
  /** Its key among one member's reminders; working the reminder out again gives the same key. */
  key: string;
  member: MemberId;
  about: ReminderAbout;
  dueAt: Instant;
  /** After this time it is of no use. */
  goodUntil: Instant;
}

/** What a group of reminders is worked out from, and replaced with. Those that members asked for come from nothing. */
export type ReminderSubject = EntryId | 'sessions' | 'mornings' | 'asked' | 'reach';

/** A reminder in the queue. */
export interface Reminder extends WantedReminder {
  /** When it comes next, postponed or not. */
  nextAt: Instant;
  told: boolean;
  /** It was sent, and its member has not said that it is dealt with. */
  stands: boolean;
}
