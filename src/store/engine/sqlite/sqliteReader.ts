import { memorySnapshots } from '../snapshotCache.ts';
import { asStoreProblem } from '../storeProblem.ts';
import type { Reader, Reading } from '../turns.ts';
import { openCurrentForReading } from './database.ts';

/** Opens the file once more, read-only; its owner goes on meanwhile. */
export const openSqliteReader = (file: string): Reader => {
  const asked = <T>(attempt: () => T): T => {
    try {
      return attempt();
    } catch (error) {
      throw asStoreProblem(error, file);
    }
  };
  const { sqlite, kysely } = asked(() => openCurrentForReading(file));
  return {
    read: async <T>(work: (reading: Reading) => Promise<T>) => {
      asked(() => sqlite.exec('begin'));
      try {
        return await work({ db: kysely, snapshots: memorySnapshots(1) });
      } catch (error) {
        throw asStoreProblem(error, file);
      } finally {
        if (sqlite.inTransaction) sqlite.exec('commit');
      }
    },
    close: () => Promise.resolve(void sqlite.close()),
  };
};
