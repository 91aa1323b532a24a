import { areSamePieces } from '../resist/resistCoat.ts';
import type { PieceState } from './foldPieces.ts';
import { pieceStream, readEntryId, type MemberId } from '../ids.ts';

/** A piece planned before: by its entry, or the member's last of that name. */
export const pieceNamed = (
  typed: string,
  all: readonly PieceState[],
  member: MemberId,
): PieceState | undefined => {
  const id = readEntryId(typed);
  if (id?.stream === pieceStream) return all.find(({ seq }) => seq === id.seq);
  return all.findLast(({ by, said }) => by === member && areSamePieces(said.name, typed));
};
