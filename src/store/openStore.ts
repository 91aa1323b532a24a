import type { Clock } from '../clock.ts';
import type {
  Logbook,
  LogbookStore,
  HeldLines,
  People,
  PeopleChange,
  ReminderQueue,
} from '../studio/logbook/ports.ts';
import type { PostStore } from '../studio/logbook/roomPorts.ts';
import { hours, type StudioId } from '../studio/ids.ts';
import { openEngine } from './engine/either/openEngine.ts';
import type { Engine, Turns } from './engine/turns.ts';
import { bringStudioIn, type BroughtStudio } from './imports/bringStudioIn.ts';
import { openImports, type Imports } from './imports/imports.ts';
import { dropExpired } from './lines/dropExpired.ts';
import { learnAcross } from './learnAcross.ts';
import { storedLines } from './lines/storedLines.ts';
import { logbookStore } from './logbook/logbookStore.ts';
import { programSettings, type ProgramSettings } from './logbook/programSettings.ts';
import type { Migration } from './migrations/migration.ts';
import { migrations } from './migrations/migrations.ts';
import { openEraser, type Eraser } from './people/eraser.ts';
import { identities } from './people/identities.ts';
import { PeopleChanges } from './people/peopleChanges.ts';
import { storedReminders } from './reminders.ts';
import { storedCredentials, type StoredCredentials } from './room/credentials.ts';
import { roomPosts } from './room/roomPosts.ts';
import { refoldOutdated } from './states/refoldOutdated.ts';
import { rebuildStates } from './states/rebuildStates.ts';

export interface Store {
  books: LogbookStore;
  people: People;
  heldLines: HeldLines;
  kept: ProgramSettings;
  reminders: ReminderQueue;
  /** The stored part of one studio's room. */
  room<Reply>(studio: StudioId): { door: StoredCredentials; posts: PostStore<Reply> };
  /** Calls the listener about changes to people; returns a function that stops it. */
  followPeople(listener: (change: PeopleChange) => void): () => void;
  /** Writes a whole new studio, all or nothing: nothing when `check` throws, which sees the result. */
  bringStudioIn(
    studio: BroughtStudio,
    check: (book: Logbook) => Promise<void>,
  ): Promise<{ id: StudioId; entries: number; namesakes: string[] }>;
  imports: Imports;
  takePart: Engine['takePart'];
  /** Whether a row can be read: it throws when it cannot. */
  answers(): Promise<boolean>;
  /** Resolves when no erasure is pending. */
  erased(): Promise<void>;
  /** Folds all cached states again from the entries; returns the number of streams. */
  rebuildStates(): Promise<number>;
  /** Folds anew, at leisure, the states that other code has folded; returns the number of buckets. */
  refoldOutdated(signal: AbortSignal): Promise<number>;
  /** Lets the buckets of each studio learn what its others have shown, once a day; returns the number of entries. */
  learnAcross(signal: AbortSignal): Promise<number>;
  close(): Promise<void>;
}

export interface StoreOptions {
  /** The system's clock, not one that a user has set: it decides what has expired. */
  clock: Clock;
  /** How long to wait until another short process releases a file. */
  waitMs?: number;
  migrations?: readonly Migration[];
}

/**
 * Opens a logbook: a file, as its only owner, or a PostgreSQL database at an address like `postgres://…`, beside other
 * processes. It is created or migrated if necessary. Throws a StoreProblem.
 */
export const openStore = async (where: string, options: StoreOptions): Promise<Store> => {
  const { clock, waitMs = 5_000, migrations: steps = migrations } = options;
  const engine = await openEngine(where, { waitMs, migrations: steps });
  const { turns } = engine;
  const changes = new PeopleChanges();
  const heldLines = storedLines(turns);
  const eraser = openEraser(turns, changes, heldLines);
  const stopTidying = deleteExpiredHourly(turns, clock, eraser);
  const books = logbookStore(turns, clock, changes);
  return {
    books,
    people: identities(turns, clock, changes),
    heldLines,
    kept: programSettings(turns),
    reminders: storedReminders(turns),
    room: <Reply>(studio: StudioId) => ({
      door: storedCredentials(turns, clock, studio),
      posts: roomPosts<Reply>(engine, clock, studio),
    }),
    followPeople: (listener) => changes.listen(listener),
    bringStudioIn: (studio, check) => bringStudioIn(turns, clock, studio, check),
    imports: openImports(turns, clock),
    answers: () =>
      turns.read('directory', async ({ db }) => {
        await db.selectFrom('studios').select('id').limit(1).execute();
        return true;
      }),
    takePart: engine.takePart,
    erased: eraser.idle,
    rebuildStates: () => rebuildStates(turns),
    refoldOutdated: (signal) => refoldOutdated(turns, signal),
    learnAcross: (signal) => learnAcross({ turns, books, clock }, signal),
    close: async () => {
      stopTidying();
      await eraser.end();
      // A file that takes nothing keeps nobody from closing it.
      await heldLines.written().catch(() => undefined);
      await engine.close();
    },
  };
};

/** Deletes what has expired, now and then every hour. Errors are ignored here: the next write reports trouble with the file. */
const deleteExpiredHourly = (turns: Turns, clock: Clock, eraser: Eraser): (() => void) => {
  const tidy = async () => {
    eraser.wake();
    while (await dropExpired(turns, clock.now()));
  };
  const quietly = () => void tidy().catch(() => undefined);
  quietly();
  const timer = setInterval(quietly, hours(1)).unref();
  return () => clearInterval(timer);
};
