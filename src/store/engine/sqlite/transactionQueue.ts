import { setImmediate as nextLoop } from 'node:timers/promises';
import type { ControlledTransaction } from 'kysely';
import { dataVersionOf, savepointIn, type Database, type Savepoint } from './database.ts';
import { DraftSnapshots, memorySnapshots, type Snapshot, type SnapshotCache } from '../snapshotCache.ts';
import { asStoreProblem } from '../storeProblem.ts';
import { TurnGuard, type Job, type WriteJob } from '../turnGuard.ts';
import type { Reading, Scope, TransactionOutcome, Turns, Writing } from '../turns.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { StudioId } from '../../../studio/ids.ts';
import { openSqliteReader } from './sqliteReader.ts';
import { whileBusy } from './whileBusy.ts';
import { openWiper } from './openWiper.ts';

interface ReadJob extends Job {
  run(reading: Reading): Promise<void>;
}

const mostInOneTurn = 64;
const mostRounds = 8;
const mostStudiosRemembered = 200;

/**
 * One connection, one turn at a time. Writes that wait together share a transaction, and so one flush to the disk.
 * Each is acknowledged after the commit, and one that fails is rolled back alone. Reads run between write turns, so
 * they see a consistent state.
 */
export class TransactionQueue implements Turns {
  readonly isShared = false;
  readonly #database: Database;
  readonly #wiper: ReturnType<typeof openWiper>;
  readonly #remembered = memorySnapshots(mostStudiosRemembered);
  readonly #reads: ReadJob[] = [];
  readonly #writes: WriteJob[] = [];
  readonly #alone: (() => Promise<void>)[] = [];
  readonly #aside = new Set<Promise<unknown>>();
  #going: Promise<void> = Promise.resolve();
  readonly #guard: TurnGuard;
  #busy = false;
  readonly #savepoint: Savepoint;
  readonly #dataVersion: () => number;
  #version: number;

  constructor(database: Database) {
    this.#database = database;
    this.#guard = new TurnGuard(database.file);
    this.#wiper = openWiper(database);
    this.#savepoint = savepointIn(database.sqlite);
    this.#dataVersion = dataVersionOf(database.sqlite);
    this.#version = this.#dataVersion();
  }

  get name(): string {
    return this.#database.file;
  }

  async read<T>(_scope: Scope, work: (reading: Reading) => Promise<T>): Promise<T> {
    this.#refuse();
    const { promise, resolve, reject: fail } = Promise.withResolvers<T>();
    const run: ReadJob['run'] = async (reading) => resolve(await this.#guard.run(() => work(reading)));
    this.#reads.push({ run, fail });
    this.#go();
    return promise;
  }

  remembered(studio: StudioId): Snapshot | undefined {
    this.#forgetWhatChanged();
    return this.#remembered.get(studio);
  }

  async write<T>(_scope: Scope, work: (writing: Writing) => Promise<TransactionOutcome<T>>): Promise<T> {
    this.#refuse();
    const { job, done } = this.#guard.writeJob(work);
    this.#writes.push(job);
    this.#go();
    return done;
  }

  async readAside<T>(work: (reading: Reading) => Promise<T>): Promise<T> {
    this.#refuse();
    const reader = openSqliteReader(this.#database.file);
    const reading = reader.read(work).finally(() => void reader.close());
    this.#aside.add(reading);
    return reading.finally(() => void this.#aside.delete(reading));
  }

  /** Nobody else is there. */
  announce(): Promise<void> {
    return Promise.resolve();
  }

  compact(): Promise<boolean> {
    return this.#wiper.wipe((work) => this.alone(work));
  }

  /** Runs alone, with no reads or writes, for work on the whole file; it may wait for anything. */
  async alone<T>(work: () => Promise<T>): Promise<T> {
    this.#refuse();
    const { promise, resolve, reject } = Promise.withResolvers<T>();
    this.#alone.push(() => (async () => work())().then(resolve, reject));
    this.#go();
    return promise;
  }

  forget(): void {
    this.#remembered.clear();
  }

  async close(): Promise<void> {
    this.#guard.close();
    await this.#going;
    await Promise.allSettled(this.#aside);
    this.#database.sqlite.close();
    await this.#wiper.close();
  }

  #refuse(): void {
    this.#guard.refuse(this.#reads.length + this.#writes.length);
  }

  #go(): void {
    if (this.#busy) return;
    this.#busy = true;
    this.#going = this.#takeTurns();
  }

  async #takeTurns(): Promise<void> {
    while (this.#reads.length + this.#writes.length + this.#alone.length > 0) {
      await this.#alone.shift()?.();
      await this.#gather();
      await this.#take(this.#writes.splice(0, mostInOneTurn), (jobs) => this.#writeTurn(jobs));
    }
    this.#busy = false;
  }

  /** Whatever goes wrong in a turn, those who were in it are told, and the next turn comes. */
  async #take<J extends Job>(jobs: J[], turn: (jobs: J[]) => Promise<void>): Promise<void> {
    try {
      await turn(jobs);
    } catch (error) {
      for (const job of jobs) job.fail(error);
    }
  }

  /**
   * Waits a few rounds of the event loop while more writes arrive, so that they share one flush to the disk. Reads do
   * not wait for that, and timers run in between.
   */
  async #gather(): Promise<void> {
    for (let round = 0; round < mostRounds; round += 1) {
      const before = this.#writes.length;
      await nextLoop();
      const reads = this.#reads.splice(0);
      await this.#take(reads, (jobs) => this.#readTurn(jobs));
      const { length } = this.#writes;
      const quiet = length === 0 || (length === before && reads.length === 0);
      if (quiet || length >= mostInOneTurn) return;
    }
  }

  async #readTurn(jobs: ReadJob[]): Promise<void> {
    if (jobs.length === 0) return;
    const { kysely } = this.#database;
    try {
      this.#forgetWhatChanged();
      await kysely.connection().execute(async (db) => {
        const reading = { db, snapshots: this.#remembered };
        await Promise.all(
          jobs.map((job) => job.run(reading).catch((error: unknown) => this.#fail(job, error))),
        );
      });
    } catch (error) {
      for (const job of jobs) this.#fail(job, error);
    }
  }

  async #writeTurn(jobs: WriteJob[]): Promise<void> {
    if (jobs.length === 0) return;
    const { file, kysely } = this.#database;
    let tx: ControlledTransaction<Tables> | undefined;
    try {
      tx = await whileBusy(file, () => kysely.startTransaction().execute());
      this.#forgetWhatChanged();
      const snapshots = new DraftSnapshots(this.#remembered);
      const acknowledgements: (() => void)[] = [];
      for (const job of jobs) acknowledgements.push(await this.#runOne(job, tx, snapshots));
      await tx.commit().execute();
      snapshots.keep();
      for (const acknowledge of acknowledgements) acknowledge();
    } catch (error) {
      // The whole transaction failed, not one job: SQLite has rolled it back, or is told to.
      if (tx && !tx.isCommitted)
        await tx
          .rollback()
          .execute()
          .catch(() => undefined);
      for (const job of jobs) this.#fail(job, error);
    }
  }

  async #runOne(job: WriteJob, tx: ControlledTransaction<Tables>, below: SnapshotCache): Promise<() => void> {
    const snapshots = new DraftSnapshots(below);
    this.#savepoint.set();
    try {
      const { keep, acknowledge, evenSo } = await job.run({ db: tx, snapshots });
      if (keep) snapshots.keep();
      else this.#savepoint.goBack();
      if (!keep) await evenSo?.(tx);
      this.#savepoint.release();
      return acknowledge;
    } catch (error) {
      if (!this.#database.sqlite.inTransaction) throw error;
      this.#savepoint.goBack();
      this.#savepoint.release();
      return () => this.#fail(job, error);
    }
  }

  #fail(job: ReadJob | WriteJob, error: unknown): void {
    job.fail(asStoreProblem(error, this.#database.file));
  }

  #forgetWhatChanged(): void {
    const version = this.#dataVersion();
    if (version !== this.#version) this.#remembered.clear();
    this.#version = version;
  }
}
