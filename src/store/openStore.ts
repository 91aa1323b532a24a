import { accessSync, constants, existsSync, realpathSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Clock } from '../clock.ts';
import type {
  Logbook,
  LogbookStore,
  HeldLines,
  People,
  PeopleChange,
  ReminderQueue,
} from '../studio/logbook/ports.ts';
import { hours, type StudioId } from '../studio/ids.ts';
import { bringStudioIn, type BroughtStudio } from './imports/bringStudioIn.ts';
import { Imports } from './imports/imports.ts';
import { openDatabase, type Database } from './engine/database.ts';
import { dropExpired } from './lines/dropExpired.ts';
import { Eraser } from './people/eraser.ts';
import { Identities } from './people/identities.ts';
import { StoredSettings, type ProgramSettings } from './logbook/programSettings.ts';
import { takeLease } from './engine/lease.ts';
import { makeFolder } from './engine/makeFolder.ts';
import { migrate } from './migrate.ts';
import type { Migration } from './migrations/migration.ts';
import { migrations } from './migrations/migrations.ts';
import { makeOwnerOnly, takeFromOthers } from './engine/ownerOnly.ts';
import { PeopleChanges } from './people/peopleChanges.ts';
import { StoredReminders } from './reminders.ts';
import { StoredCredentials } from './room/credentials.ts';
import { RoomPosts } from './room/roomPosts.ts';
import { rebuildStates } from './states/rebuildStates.ts';
import { asStoreProblem, StoreProblem } from './engine/storeProblem.ts';
import { StoredLines } from './lines/storedLines.ts';
import { QueuedLogbookStore } from './logbook/logbookStore.ts';
import { TransactionQueue } from './engine/transactionQueue.ts';
import { whileBusy } from './engine/whileBusy.ts';

export interface Store {
  books: LogbookStore;
  people: People;
  heldLines: HeldLines;
  kept: ProgramSettings;
  reminders: ReminderQueue;
  /** The stored part of one studio's room. */
  room<Reply>(studio: StudioId): { door: StoredCredentials; posts: RoomPosts<Reply> };
  /** Calls the listener about changes to people; returns a function that stops it. */
  followPeople(listener: (change: PeopleChange) => void): () => void;
  /** Writes a whole new studio, all or nothing: nothing when `check` throws, which sees the result. */
  bringStudioIn(
    studio: BroughtStudio,
    check: (book: Logbook) => Promise<void>,
  ): Promise<{ id: StudioId; entries: number; namesakes: string[] }>;
  imports: Imports;
  /** Resolves when no erasure is pending. */
  erased(): Promise<void>;
  /** Folds all cached states again from the entries; returns the number of streams. */
  rebuildStates(): Promise<number>;
  close(): Promise<void>;
}

export interface StoreOptions {
  /** The system's clock, not one that a user has set: it decides what has expired. */
  clock: Clock;
  /** How long to wait until another short process releases the file. */
  waitMs?: number;
  migrations?: readonly Migration[];
}

/** Opens the file as its only owner, after creating or migrating it if necessary. Throws a StoreProblem. */
export const openStore = async (file: string, options: StoreOptions): Promise<Store> => {
  const { clock, waitMs = 5_000, migrations: steps = migrations } = options;
  try {
    const path = realPath(file);
    const before = existsSync(`${path}.lock`);
    const lease = await takeLease(path, waitMs);
    try {
      refuseOtherNames(path);
      const database = await openUpToDate(path, steps);
      const turns = new TransactionQueue(database);
      const changes = new PeopleChanges();
      const eraser = new Eraser(turns, changes);
      const stopTidying = deleteExpiredHourly(turns, clock, eraser);
      return {
        books: new QueuedLogbookStore(turns, clock, changes),
        people: new Identities(turns, clock, changes),
        heldLines: new StoredLines(turns),
        kept: new StoredSettings(turns),
        reminders: new StoredReminders(turns),
        room: <Reply>(studio: StudioId) => ({
          door: new StoredCredentials(turns, clock, studio),
          posts: new RoomPosts<Reply>(turns, clock, studio),
        }),
        followPeople: (listener) => changes.listen(listener),
        bringStudioIn: (studio, check) => bringStudioIn(turns, clock, studio, check),
        imports: new Imports(turns, clock),
        erased: () => eraser.idle(),
        rebuildStates: () => rebuildStates(turns),
        close: async () => {
          stopTidying();
          await eraser.end();
          await turns.close();
          database.sqlite.close();
          lease.release();
        },
      };
    } catch (error) {
      lease.release();
      // A file that is not ours needs no lock, so none is left beside it.
      const problem = asStoreProblem(error, file);
      const foreign =
        problem instanceof StoreProblem && ['not-ours', 'corrupt', 'several-names'].includes(problem.kind);
      if (foreign && !before) rmSync(`${path}.lock`, { force: true });
      throw error;
    }
  } catch (error) {
    throw asStoreProblem(error, file);
  }
};

const openUpToDate = async (path: string, steps: readonly Migration[]): Promise<Database> => {
  makeOwnerOnly(path);
  const database = await whileBusy(path, () => openDatabase(path, steps.length));
  try {
    takeFromOthers(path);
    await migrate(database, steps);
    return database;
  } catch (error) {
    database.sqlite.close();
    throw error;
  }
};

/**
 * Deletes what has expired, now and then every hour. Errors are ignored here: the next write reports trouble with the
 * file.
 */
const deleteExpiredHourly = (turns: TransactionQueue, clock: Clock, eraser: Eraser): (() => void) => {
  const tidy = async () => {
    eraser.wake();
    while (await dropExpired(turns, clock.now()));
  };
  const quietly = () => void tidy().catch(() => undefined);
  quietly();
  const timer = setInterval(quietly, hours(1)).unref();
  return () => clearInterval(timer);
};

/** The lease stands beside one name. By a hard link another process would not meet it, and two logs would break the file. */
const refuseOtherNames = (path: string): void => {
  const names = existsSync(path) ? statSync(path).nlink : 1;
  if (names > 1) throw new StoreProblem('several-names', path, `the file has ${names} names`);
};

/** The real path of the file, existing or not: two names of one file must share one lease. */
const realPath = (file: string): string => {
  try {
    makeFolder(dirname(file));
    const folder = realpathSync(dirname(file));
    const path = existsSync(file) ? realpathSync(file) : join(folder, basename(file));
    accessSync(dirname(path), constants.W_OK);
    if (existsSync(path)) accessSync(path, constants.R_OK | constants.W_OK);
    return path;
  } catch (error) {
    const problem = asStoreProblem(error, file);
    throw problem instanceof StoreProblem
      ? problem
      : new StoreProblem('cannot-open', file, String(error), error);
  }
};
