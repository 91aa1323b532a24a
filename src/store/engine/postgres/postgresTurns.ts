import { sql, type Kysely, type Transaction } from 'kysely';
import type { Instant, StudioId } from '../../../studio/ids.ts';
import type { Tables } from '../../migrations/tables.ts';
import { memorySnapshots, type Snapshot } from '../snapshotCache.ts';
import { TurnGuard } from '../turnGuard.ts';
import type { Reading, Scope, TransactionOutcome, Turns, Writing } from '../turns.ts';
import { announce } from './announcements.ts';
import { Attempts } from './attempts.ts';
import { Gathered } from './gathered.ts';
import { Lanes } from './lanes.ts';
import { VersionedSnapshots } from './versionedSnapshots.ts';
import { asPostgresProblem } from './postgresProblem.ts';
import { versionOf } from './statements.ts';
import { writeTurn, type StudioJob } from './writeTurn.ts';

const mostStudiosRemembered = 200;
const mostReadsOfStudio = 4;

const studioIn = (scope: Scope): StudioId | undefined => {
  if (scope === 'directory') return undefined;
  return 'logbook' in scope ? scope.logbook : scope.rows;
};

/**
 * Turns on PostgreSQL, beside those of other processes. A studio's writes come one after another, by its own row;
 * different studios' run at the same time. Reads see one moment and wait for nobody.
 */
export class PostgresTurns implements Turns {
  readonly name: string;
  readonly isShared = true;
  readonly itsNow = sql<Instant>`(extract(epoch from statement_timestamp()) * 1000)::bigint`;
  readonly #kysely: Kysely<Tables>;
  readonly #remembered = new VersionedSnapshots(mostStudiosRemembered);
  /** In this process a studio's writes wait here, and not each on a connection of its own. Those that wait share a turn. */
  readonly #writes = new Gathered<StudioId, StudioJob>((studio, jobs) =>
    this.#attempts.together(jobs, (some) => this.#write(studio, some)),
  );
  readonly #reads = new Lanes(mostReadsOfStudio);
  readonly #attempts = new Attempts();
  readonly #going = new Set<Promise<unknown>>();
  readonly #guard: TurnGuard;

  constructor(name: string, kysely: Kysely<Tables>) {
    this.name = name;
    this.#kysely = kysely;
    this.#guard = new TurnGuard(name);
  }

  remembered(studio: StudioId): Promise<Snapshot | undefined> {
    return this.#take(() =>
      this.#attempts.untilPassed(async () => {
        const [row] = await versionOf(this.#kysely, { studio });
        return row && this.#remembered.at(studio, row.version).get(studio);
      }),
    );
  }

  read<T>(scope: Scope, work: (reading: Reading) => Promise<T>): Promise<T> {
    const studio = studioIn(scope);
    return this.#take(() =>
      this.#reads.pass(studio ?? '', () => this.#attempts.untilPassed(() => this.#readTurn(scope, work))),
    );
  }

  write<T>(scope: Scope, work: (writing: Writing) => Promise<TransactionOutcome<T>>): Promise<T> {
    const studio = studioIn(scope);
    return this.#take(() => {
      const { job, done } = this.#guard.writeJob(work);
      const one = { ...job, isLogbook: scope !== 'directory' && 'logbook' in scope };
      if (studio !== undefined) this.#writes.add(studio, one);
      else this.#attempts.untilPassed(() => this.#write(undefined, [one])).catch(job.fail);
      return done;
    });
  }

  readAside<T>(work: (reading: Reading) => Promise<T>): Promise<T> {
    // It is not tried again after trouble: the work may already have passed on some of what it read.
    return this.#take(() => this.#readTurn('directory', work));
  }

  announce(db: Transaction<Tables>, studio: StudioId): Promise<void> {
    return announce(db, studio);
  }

  async compact(): Promise<boolean> {
    await this.#take(() => sql`vacuum`.execute(this.#kysely));
    return true;
  }

  forget(): void {
    this.#remembered.clear();
  }

  async close(): Promise<void> {
    this.#guard.close();
    while (this.#going.size > 0) await Promise.allSettled(this.#going);
  }

  async #take<T>(turn: () => Promise<T>): Promise<T> {
    this.#guard.refuse(this.#going.size);
    const going = turn();
    this.#going.add(going);
    try {
      return await going;
    } catch (error) {
      throw asPostgresProblem(error, this.name);
    } finally {
      this.#going.delete(going);
    }
  }

  #write(studio: StudioId | undefined, jobs: readonly StudioJob[]): Promise<void> {
    return writeTurn({ kysely: this.#kysely, remembered: this.#remembered }, studio, jobs);
  }

  #readTurn<T>(scope: Scope, work: (reading: Reading) => Promise<T>): Promise<T> {
    const studio = typeof scope === 'object' && 'logbook' in scope ? scope.logbook : undefined;
    return this.#kysely
      .transaction()
      .setIsolationLevel('repeatable read')
      .setAccessMode('read only')
      .execute(async (db) => {
        const [row] = studio === undefined ? [] : await versionOf(db, { studio });
        const snapshots = studio && row ? this.#remembered.at(studio, row.version) : memorySnapshots(1);
        return this.#guard.run(() => work({ db, snapshots }));
      });
  }
}
