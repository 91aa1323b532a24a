import { setImmediate as nextLoop } from 'node:timers/promises';
import type { Seq, StreamNo, StudioId } from '../../studio/ids.ts';
import type { Logbook } from '../../studio/logbook/ports.ts';
import { openCurrentForReading } from '../engine/database.ts';
import { MemorySnapshotCache } from '../engine/snapshotCache.ts';
import { ReadingLogbook } from './readingLogbook.ts';
import { asStoreProblem } from '../engine/storeProblem.ts';

/** Lets the event loop run between two batches. */
class YieldingLogbook extends ReadingLogbook {
  override async history(stream: StreamNo, range: { after: Seq; most: number }) {
    await nextLoop();
    return super.history(stream, range);
  }
}

/** Reads a studio through a connection of its own, as of one moment; the owner of the file goes on meanwhile. */
export const readBesideOwner = async <T>(
  file: string,
  studio: StudioId,
  work: (book: Logbook) => Promise<T>,
): Promise<T> => {
  try {
    const { sqlite, kysely } = openCurrentForReading(file);
    try {
      sqlite.exec('begin');
      const book = new YieldingLogbook({ db: kysely, snapshots: new MemorySnapshotCache(1) }, studio);
      try {
        return await work(book);
      } finally {
        book.end();
      }
    } finally {
      sqlite.close();
    }
  } catch (error) {
    throw asStoreProblem(error, file);
  }
};
