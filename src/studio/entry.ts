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

/** The numbers of the entries that others among these took back. */
export const undoneIn = (entries: readonly { event: { kind: string; of?: Seq } }[]): Set<Seq> =>
  new Set(entries.flatMap(({ event: { kind, of } }) => (kind === 'undo' && of !== undefined ? [of] : [])));
