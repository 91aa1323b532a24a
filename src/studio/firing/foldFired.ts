import { undoneIn, type Entry } from '../entry.ts';
import type { FiredEvent, FiredSaid } from './firedEvent.ts';
import type { EntryId, Instant, MemberId, Seq } from '../ids.ts';

/** A fired result, as its member logged it. */
export interface FiredState {
  id: EntryId;
  seq: Seq;
  by: MemberId;
  /** When it was logged. */
  at: Instant;
  said: FiredSaid;
}

/** The results, oldest first, without those that were undone. */
export const foldFired = (entries: readonly Entry<FiredEvent>[]): FiredState[] => {
  const undone = undoneIn(entries);
  return entries
    .flatMap(({ id, seq, by, at, event }) =>
      event.kind === 'fired' && !undone.has(seq) ? [{ id, seq, by, at, said: event.fired }] : [],
    )
    .sort((a, b) => a.seq - b.seq);
};
