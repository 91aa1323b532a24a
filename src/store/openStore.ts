import { mkdirSync, realpathSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Clock } from '../clock.ts';
import type { Books, HeldLines, People } from '../studio/ports.ts';
import { openDatabase } from './database.ts';
import { Identities } from './identities.ts';
import { StoredKept, type Kept } from './kept.ts';
import { takeLease } from './lease.ts';
import { migrate } from './migrate.ts';
import type { Migration } from './migration.ts';
import { migrations } from './migrations.ts';
import { asStoreProblem } from './storeProblem.ts';
import { StoredLines } from './storedLines.ts';
import { TurnBooks } from './turnBooks.ts';
import { Turns } from './turns.ts';

export interface Store {
  books: Books;
  people: People;
  heldLines: HeldLines;
  kept: Kept;
  close(): Promise<void>;
}

export interface StoreOptions {
  /** The system's clock, never one that somebody has set: it decides what has expired. */
  clock: Clock;
  /** How long to wait for another short process to be done with the file. */
  waitMs?: number;
  migrations?: readonly Migration[];
}

/** Opens the file as its only owner, and makes or migrates it first when that is due. Throws a StoreProblem. */
export const openStore = async (file: string, options: StoreOptions): Promise<Store> => {
  const { clock, waitMs = 5_000, migrations: steps = migrations } = options;
  try {
    const path = realPath(file);
    const lease = await takeLease(path, waitMs);
    try {
      const database = openDatabase(path, steps.length);
      await migrate(database, steps);
      const turns = new Turns(database);
      return {
        books: new TurnBooks(turns, clock),
        people: new Identities(turns, clock),
        heldLines: new StoredLines(turns),
        kept: new StoredKept(turns),
        close: async () => {
          await turns.close();
          database.sqlite.close();
          lease.release();
        },
      };
    } catch (error) {
      lease.release();
      throw error;
    }
  } catch (error) {
    throw asStoreProblem(error, file);
  }
};

/** Two names of one file must lead to one lease. */
const realPath = (file: string): string => {
  mkdirSync(dirname(file), { recursive: true });
  try {
    return realpathSync(file);
  } catch {
    return join(realpathSync(dirname(file)), basename(file));
  }
};
