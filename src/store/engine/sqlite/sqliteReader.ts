import { memorySnapshots } from '../snapshotCache.ts';
import { asStoreProblem } from '../storeProblem.ts';
import type { Reader } from '../turns.ts';
import { openCurrentForReading } from './database.ts';

const orStoreProblem = <T>(file: string, attempt: () => T): T => {
  try {
    return attempt();
  } catch (error) {
    throw asStoreProblem(error, file);
  }
};

/** Opens the file once more, read-only; its owner goes on meanwhile. */
export const openSqliteReader = (file: string): Reader => {
  const { sqlite, kysely } = orStoreProblem(file, () => openCurrentForReading(file));
  return {
    async read(work) {
      orStoreProblem(file, () => sqlite.exec('begin'));
      try {
        return await work({ db: kysely, snapshots: memorySnapshots(1) });
      } catch (error) {
        throw asStoreProblem(error, file);
      } finally {
        if (sqlite.inTransaction) sqlite.exec('commit');
      }
    },
    async close() {
      sqlite.close();
    },
  };
};
