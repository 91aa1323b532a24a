import { areSamePieces } from '../resist/resistCoat.ts';
import type { PieceState } from './foldPieces.ts';
import { pieceStream, readEntryId, type MemberId } from '../ids.ts';

/** A planned piece: by its entry, or the member's latest of that name. */
export const pieceNamed = (
  typed: string,
  all: readonly PieceState[],
  member: MemberId,
): PieceState | undefined => {
  const id = readEntryId(typed);
  if (id?.stream === pieceStream) return all.find(({ seq }) => seq === id.seq);
  return all.findLast(({ by, said }) => by === member && areSamePieces(said.name, typed));
};
