import type { EntryId, Instant, MemberId, Seq, StreamNo } from './ids.ts';

/** One entry of the logbook. `at` is when it happened, `loggedAt` when it was written down. */
export interface Entry<E> {
  id: EntryId;
  stream: StreamNo;
  seq: Seq;
  at: Instant;
  loggedAt: Instant;
  by: MemberId;
  event: E;
}
