import { studioStream, type Seq, type StreamNo, type StudioId } from '../../studio/ids.ts';
import { refoldAndSave } from './refoldAndSave.ts';
import type { Writing } from '../engine/turns.ts';

/** Folds a bucket again after an erasure: its state repeats the reason for a hold. */
export const refoldAfterErasure = async (
  { db, snapshots }: Writing,
  studio: StudioId,
  stream: StreamNo,
  last: Seq,
): Promise<void> => {
  const snapshot = snapshots.get(studio);
  if (stream <= studioStream) {
    // Coats are folded again when they are next asked for.
    if (snapshot) {
      const { coats: _, ...rest } = snapshot;
      snapshots.set(studio, rest);
    }
    return;
  }
  const state = await refoldAndSave(db, studio, stream, last);
  if (snapshot) snapshots.set(studio, { ...snapshot, streams: new Map(snapshot.streams).set(stream, state) });
};
