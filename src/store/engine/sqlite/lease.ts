import { setTimeout as pause } from 'node:timers/promises';
import Sqlite, { SqliteError } from 'better-sqlite3';
import { makeOwnerOnly } from './ownerOnly.ts';
import { asStoreProblem, StoreProblem } from '../storeProblem.ts';

export interface Lease {
  release(): void;
}

const isBusy = (error: unknown) => error instanceof SqliteError && error.code.startsWith('SQLITE_BUSY');

/**
 * Makes this process the only owner of a database file. The lease is an operating system lock on an empty file beside
 * it, so it ends with the process, and there is no process id to mistake for another's. If it is taken, we wait a
 * while: commands at a terminal are short and follow one another.
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
      // Nothing is ever written to it, so it cannot be left half written.
      lock.exec('begin immediate');
      return { release: () => void lock.close() };
    } catch (error) {
      if (!isBusy(error) || performance.now() >= giveUpAt) {
        lock.close();
        if (isBusy(error)) throw new StoreProblem('locked', file, 'another process owns it');
        throw asStoreProblem(error, file);
      }
    }
    // Random, so that of several waiting processes none always comes last.
    await pause(10 + Math.random() * 30);
  }
};
