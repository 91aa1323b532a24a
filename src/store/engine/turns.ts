import type { Kysely, RawBuilder, Transaction } from 'kysely';
import type { Instant, StudioId } from '../../studio/ids.ts';
import type { Tables } from '../migrations/tables.ts';
import type { Snapshot, SnapshotCache } from './snapshotCache.ts';

export interface Reading {
  readonly db: Kysely<Tables>;
  readonly snapshots: SnapshotCache;
}

/** Exists only inside a transaction. The outer handle has another type, because it would wait for itself. */
export interface Writing {
  readonly db: Transaction<Tables>;
  readonly snapshots: SnapshotCache;
}

export interface TransactionOutcome<T> {
  keep: boolean;
  value: T;
  /** Written even when the rest of the turn is rolled back. */
  evenSo?: ((db: Transaction<Tables>) => Promise<void>) | undefined;
}

/**
 * What a turn is about: a studio's logbook and what it folds to; other rows of a studio, which no snapshot holds; or the
 * directory, whose rows are found without knowing a studio. Only on PostgreSQL does it make a difference: a studio's
 * writes come one after another there, and only those to its logbook make what other processes remember stale.
 */
export type Scope = { readonly logbook: StudioId } | { readonly rows: StudioId } | 'directory';

/** Everything is read and written in turns: each sees one moment, and a write is kept as a whole or not at all. */
export interface Turns {
  /** What a sentence calls it: a file's path, or a database's address without the password. */
  readonly name: string;
  /** Whether other processes write to it too. */
  readonly isShared: boolean;
  /** What time it is by the database's own clock, where processes on machines with other clocks share it. */
  readonly itsNow?: RawBuilder<Instant>;
  /** Work in a turn may wait for its own queries and nothing else. It may run again after trouble with the database. */
  read<T>(scope: Scope, work: (reading: Reading) => Promise<T>): Promise<T>;
  /** What is remembered of a studio as it was last committed, without a turn. */
  remembered(studio: StudioId): Snapshot | undefined | Promise<Snapshot | undefined>;
  /** Runs the work in a transaction. It commits only when the work says so and does not throw. */
  write<T>(scope: Scope, work: (writing: Writing) => Promise<TransactionOutcome<T>>): Promise<T>;
  /** Reads as of one moment, for as long as it takes, and holds up nobody. */
  readAside<T>(work: (reading: Reading) => Promise<T>): Promise<T>;
  /** With the commit of this turn, other processes hear that something is new in a studio's room. */
  announce(db: Transaction<Tables>, studio: StudioId): Promise<void>;
  /** Clears away what deleted rows left behind; false when it has to be tried again. */
  compact(): Promise<boolean>;
  /** Makes the next turn read everything from the database again. */
  forget(): void;
  /** Finishes the waiting turns and refuses new ones. */
  close(): Promise<void>;
}

/** Keeps whatever the work writes. */
export const writeAll = <T>(turns: Turns, scope: Scope, work: (writing: Writing) => Promise<T>): Promise<T> =>
  turns.write(scope, async (writing) => ({ keep: true, value: await work(writing) }));

/** Reads beside whoever owns the database, and changes nothing. */
export interface Reader {
  /** The work sees one moment. */
  read<T>(work: (reading: Reading) => Promise<T>): Promise<T>;
  close(): Promise<void>;
}

/**
 * What one process takes for itself: all of Discord's servers, or some of their parts by number; or, for a moment, a
 * studio's room, for which others wait.
 */
export type Part = 'all' | readonly number[] | { readonly room: StudioId };

/** An open database. */
export interface Engine {
  readonly turns: Turns;
  /**
   * Takes a part for this process, until it is released or the process ends. Throws a StoreProblem when another process
   * has it, and calls `lost` when another has taken it while the connection was lost.
   */
  takePart(part: Part, lost: (why: unknown) => void): Promise<{ release(): Promise<void> }>;
  /** Calls the listener after announcements of other processes about a studio. A lost connection loses some. */
  hear(studio: StudioId, listener: () => void): () => void;
  /** Reads everything while nobody can write. Refused while another bot is connected. */
  whileNobodyWrites<T>(work: (reading: Reading) => Promise<T>): Promise<T>;
  /** Finishes the waiting turns, and lets go of the database. */
  close(): Promise<void>;
}
