import { setImmediate as nextLoop } from 'node:timers/promises';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import type { Logbook } from '../../studio/logbook/ports.ts';
import { openReader } from '../engine/either/openEngine.ts';
import type { Reading } from '../engine/turns.ts';
import { during, ReadingLogbook } from './readingLogbook.ts';

/** Lets the event loop run between two batches. */
class YieldingLogbook extends ReadingLogbook {
  override async history(stream: StreamNo, range: { after: Seq; most: number }) {
    await nextLoop();
    return super.history(stream, range);
  }
}

/** A long read, in a turn of its own. */
export const readAtLeisure =
  <T>(studio: StudioId, work: (book: Logbook) => Promise<T>) =>
  (reading: Reading): Promise<T> =>
    during(new YieldingLogbook(reading, studio), work);

/** Reads a studio through a connection of its own, as of one moment; the owner goes on meanwhile. */
export const readBesideOwner = async <T>(
  where: string,
  studio: StudioId,
  work: (book: Logbook) => Promise<T>,
): Promise<T> => {
  const reader = await openReader(where);
  try {
    return await reader.read(readAtLeisure(studio, work));
  } finally {
    await reader.close();
  }
};
