import type { Entry } from '../entry.ts';
import type { FiredEvent, FiredSaid } from './firedEvent.ts';
import type { EntryId, Instant, MemberId, Seq } from '../ids.ts';

/** A result from the kiln, as its member found it. */
export interface FiredState {
  id: EntryId;
  seq: Seq;
  by: MemberId;
  /** When it was told. */
  at: Instant;
  said: FiredSaid;
}

/** The results that stand, oldest first; what was taken back left out. */
export const foldFired = (entries: readonly Entry<FiredEvent>[]): FiredState[] => {
  const undone = new Set(entries.flatMap(({ event }) => (event.kind === 'undo' ? [event.of] : [])));
  return entries
    .flatMap(({ id, seq, by, at, event }) =>
      event.kind === 'fired' && !undone.has(seq) ? [{ id, seq, by, at, said: event.fired }] : [],
    )
    .sort((a, b) => a.seq - b.seq);
};
