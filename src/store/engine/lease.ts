import { setTimeout as pause } from 'node:timers/promises';
import Sqlite, { SqliteError } from 'better-sqlite3';
import { makeOwnerOnly } from './ownerOnly.ts';
import { asStoreProblem, StoreProblem } from './storeProblem.ts';

export interface Lease {
  release(): void;
}

const isBusy = (error: unknown) => error instanceof SqliteError && error.code.startsWith('SQLITE_BUSY');

/**
 * Makes this process the only owner of a database file. The lease is a lock of the operating system on an empty
 * file beside it, so that it ends with the process however that dies, and no process number is ever mistaken
 * for another's. Whoever finds it taken waits a while: commands at a terminal are short and follow one another.
 */
export const takeLease = async (file: string, waitMs: number): Promise<Lease> => {
  let lock: Sqlite.Database;
  try {
    makeOwnerOnly(`${file}.lock`);
    lock = new Sqlite(`${file}.lock`, { timeout: 0 });
  } catch (error) {
    throw asStoreProblem(error, file);
  }
  const giveUpAt = performance.now() + waitMs;
  for (;;) {
    try {
      // Never written to: a file that stays empty cannot be left half written.
      lock.exec('begin immediate');
      return { release: () => void lock.close() };
    } catch (error) {
      if (!isBusy(error) || performance.now() >= giveUpAt) {
        lock.close();
        if (isBusy(error)) throw new StoreProblem('locked', file, 'another process owns it');
        throw asStoreProblem(error, file);
      }
    }
    // Of several that wait, none should always come last.
    await pause(10 + Math.random() * 30);
  }
};
