import { undoneIn, type Entry } from '../entry.ts';
import type { EntryId, Instant, MemberId, Seq } from '../ids.ts';
import type { PieceEvent, PieceSaid, PrepStep } from './pieceEvent.ts';

/** A piece on its way to the kiln, and its finished steps. */
export interface PieceState {
  id: EntryId;
  seq: Seq;
  by: MemberId;
  at: Instant;
  said: PieceSaid;
  steps: PrepStep[];
  done: { step: PrepStep; at: Instant }[];
}

/** The pieces in order of their entries, oldest first, without those that were undone. */
export const foldPieces = (entries: readonly Entry<PieceEvent>[]): PieceState[] => {
  const undone = undoneIn(entries);
  const pieces = new Map<Seq, PieceState>();
  for (const { id, seq, by, at, event } of [...entries].sort((a, b) => a.seq - b.seq)) {
    if (undone.has(seq)) continue;
    if (event.kind === 'piece')
      pieces.set(seq, { id, seq, by, at, said: event.piece, steps: event.steps, done: [] });
    const before = event.kind === 'done' ? pieces.get(event.of) : undefined;
    if (event.kind !== 'done' || !before) continue;
    const fresh = event.steps.filter((step) => !before.done.some((one) => one.step === step));
    pieces.set(before.seq, { ...before, done: [...before.done, ...fresh.map((step) => ({ step, at }))] });
  }
  return [...pieces.values()];
};
