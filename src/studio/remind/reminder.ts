import type { EntryId, Instant, MemberId, Seq, StreamNo } from '../ids.ts';

/** What somebody is reminded of. */
export type ReminderAbout =
  /** A plan, or the start of a session, comes before a coat is ready. */
  | { kind: 'early'; coat: Seq; plan: Instant; session?: string }
  | { kind: 'ready'; coat: Seq }
  /** Latex is still on, and the kiln is to be fired. */
  | { kind: 'peel'; coat: Seq; firing: Instant }
  /** Buckets want a stir or a reading before a session. */
  | { kind: 'buckets'; session: string; from: Instant }
  /** Two readings agree on a change that nobody logged: the bucket, and the first of them. */
  | { kind: 'unlogged'; bucket: StreamNo; reading: Seq }
  /** Somebody could not be reminded: their messages are closed, or the channel is gone. */
  | { kind: 'unreachable'; why: 'closed' | 'gone' };

/** A reminder as it ought to come, by what is in the logbook. */
export interface WantedReminder {
  /** Its name among one member's reminders; the same for the same reminder, however often it is worked out. */
  key: string;
  member: MemberId;
  about: ReminderAbout;
  dueAt: Instant;
  /** From then on it is of no use to anybody. */
  goodUntil: Instant;
}

/** What reminders are worked out from, and dropped with: a coat's id, a reading's, the sessions, or how people are reached. */
export type ReminderSubject = EntryId | 'sessions' | 'reach';

/** A reminder as it stands in the queue. */
export interface Reminder extends WantedReminder {
  /** When it comes next, put off or not. */
  nextAt: Instant;
  told: boolean;
}
