import { studioStream, type Seq, type StreamNo, type StudioId } from '../../studio/ids.ts';
import { foldHead } from './foldHead.ts';
import type { Writing } from '../engine/transactionQueue.ts';

/** The bucket as it is told now: its cached state repeats why it is held. */
export const foldAnew = async (
  { db, pages }: Writing,
  studio: StudioId,
  stream: StreamNo,
  last: Seq,
): Promise<void> => {
  const page = pages.get(studio);
  if (stream <= studioStream) {
    // Coats are folded anew when somebody asks for them.
    if (page) {
      const { coats: _, ...rest } = page;
      pages.set(studio, rest);
    }
    return;
  }
  const head = await foldHead(db, studio, stream, last);
  if (page) pages.set(studio, { ...page, heads: new Map(page.heads).set(stream, head) });
};
