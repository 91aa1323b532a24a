import { studioStream, type Seq, type StreamNo, type StudioId } from '../../studio/ids.ts';
import { foldHead } from './foldHead.ts';
import type { Writing } from '../engine/transactionQueue.ts';

/** Folds a bucket again after an erasure: its state repeats the reason for a hold. */
export const foldAnew = async (
  { db, pages }: Writing,
  studio: StudioId,
  stream: StreamNo,
  last: Seq,
): Promise<void> => {
  const page = pages.get(studio);
  if (stream <= studioStream) {
    // Coats are folded again when they are next asked for.
    if (page) {
      const { coats: _, ...rest } = page;
      pages.set(studio, rest);
    }
    return;
  }
  const head = await foldHead(db, studio, stream, last);
  if (page) pages.set(studio, { ...page, heads: new Map(page.heads).set(stream, head) });
};
