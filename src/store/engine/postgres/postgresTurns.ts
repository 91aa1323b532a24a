import { setTimeout as pause } from 'node:timers/promises';
import { sql, type Kysely, type Transaction } from 'kysely';
import type { Instant, StudioId } from '../../../studio/ids.ts';
import type { Tables } from '../../migrations/tables.ts';
import { DraftSnapshots, MemorySnapshotCache, type Snapshot, type SnapshotCache } from '../snapshotCache.ts';
import { StoreProblem } from '../storeProblem.ts';
import { TurnGuard } from '../turnGuard.ts';
import type { Reading, Scope, TransactionOutcome, Turns, Writing } from '../turns.ts';
import { announce } from './announcements.ts';
import { Gathered } from './gathered.ts';
import { Lanes } from './lanes.ts';
import { Pages } from './pages.ts';
import { begin, goBack, raise, releaseSavepoint, setSavepoint, versionOf } from './statements.ts';
import { asPostgresProblem, isPassing, isUnsure } from './postgresProblem.ts';

/** More turns than this would wait so long that nobody needs the answer any more. */
const mostWaiting = 4_000;
const mostStudiosRemembered = 200;
/** No more turns at once than there are connections: waiting for one has a limit of its own. */
const mostAtOnce = 10;
const mostReadsOfStudio = 4;
/** A server is back within seconds after a restart; whoever waits longer is better told. */
const patienceMs = 8_000;

/** Ends a transaction that is not to be kept. */
class NotKept extends Error {}

const studioIn = (scope: Scope): StudioId | undefined => {
  if (scope === 'directory') return undefined;
  return 'logbook' in scope ? scope.logbook : scope.rows;
};

const scratch = () => new MemorySnapshotCache(mostStudiosRemembered);

interface WriteJob {
  readonly isLogbook: boolean;
  run(writing: Writing): Promise<Omit<TransactionOutcome<unknown>, 'value'> & { acknowledge(): void }>;
  /** Cannot throw: it settles the promise that somebody waits for. */
  fail(error: unknown): void;
}

interface Done {
  readonly changes: 'logbook' | 'rows' | 'nothing';
  acknowledge(): void;
}

/**
 * Turns on PostgreSQL, beside those of other processes. A studio's writes come one after another, by its own row;
 * different studios' run at the same time. Reads see one moment and wait for nobody.
 */
export class PostgresTurns implements Turns {
  readonly name: string;
  readonly isShared = true;
  readonly itsNow = sql<Instant>`(extract(epoch from statement_timestamp()) * 1000)::bigint`;
  readonly #kysely: Kysely<Tables>;
  readonly #pages = new Pages(mostStudiosRemembered);
  /** In this process a studio's writes wait here, and not each on a connection of its own. Those that wait share a turn. */
  readonly #writes = new Gathered<StudioId, WriteJob>((studio, jobs) => this.#writeAll(studio, jobs));
  readonly #reads = new Lanes(mostReadsOfStudio);
  readonly #connections = new Lanes(mostAtOnce);
  readonly #going = new Set<Promise<unknown>>();
  /** Set during the work of a turn: work that asked for another turn could wait for itself. */
  readonly #within = new TurnGuard();
  #closed = false;

  constructor(name: string, kysely: Kysely<Tables>) {
    this.name = name;
    this.#kysely = kysely;
  }

  remembered(studio: StudioId): Promise<Snapshot | undefined> {
    return this.#take(() =>
      this.#untilPassed(async () => {
        const [row] = await versionOf(this.#kysely, { studio });
        return row && this.#pages.at(studio, row.version).get(studio);
      }),
    );
  }

  read<T>(scope: Scope, work: (reading: Reading) => Promise<T>): Promise<T> {
    const studio = studioIn(scope);
    return this.#take(() =>
      this.#reads.pass(studio ?? '', () => this.#untilPassed(() => this.#readTurn(scope, work))),
    );
  }

  write<T>(scope: Scope, work: (writing: Writing) => Promise<TransactionOutcome<T>>): Promise<T> {
    const studio = studioIn(scope);
    return this.#take(
      () =>
        new Promise<T>((resolve, fail) => {
          const run: WriteJob['run'] = async (writing) => {
            const { value, ...outcome } = await this.#within.run(() => work(writing));
            return { ...outcome, acknowledge: () => resolve(value) };
          };
          const job = { isLogbook: 'logbook' in Object(scope), run, fail };
          if (studio !== undefined) this.#writes.add(studio, job);
          else this.#untilPassed(() => this.#writeTurn(undefined, [job])).catch(fail);
        }),
    );
  }

  readAside<T>(work: (reading: Reading) => Promise<T>): Promise<T> {
    // It is not tried again after trouble: the work may already have passed on some of what it read.
    return this.#take(() => this.#readTurn('directory', work));
  }

  announce(db: Transaction<Tables>, studio: StudioId): Promise<void> {
    return announce(db, studio);
  }

  async compact(): Promise<boolean> {
    const tables = ['events', 'notes', 'streams', 'replies', 'room_posts', 'held_lines', 'open_questions'];
    await this.#take(() =>
      sql`vacuum ${sql.join(tables.map((one) => sql.table(one)))}`.execute(this.#kysely),
    );
    return true;
  }

  forget(): void {
    this.#pages.clear();
  }

  async close(): Promise<void> {
    this.#closed = true;
    while (this.#going.size > 0) await Promise.allSettled(this.#going);
  }

  #refuse(): void {
    if (this.#within.isWithin) throw new Error('A turn was asked for within a turn: it might never come.');
    if (this.#closed) throw new StoreProblem('closed', this.name, 'the store is closed');
    if (this.#going.size >= mostWaiting)
      throw new StoreProblem('crowded', this.name, `${mostWaiting} wait for their turn`);
  }

  async #take<T>(turn: () => Promise<T>): Promise<T> {
    this.#refuse();
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

  /** After a conflict, a deadlock or a lost connection nothing of the turn is there, and it is taken again. */
  async #untilPassed<T>(turn: () => Promise<T>): Promise<T> {
    const giveUpAt = performance.now() + patienceMs;
    for (let tries = 0; ; tries += 1) {
      try {
        return await this.#connections.pass('', turn);
      } catch (error) {
        if (!isPassing(error) || performance.now() >= giveUpAt) throw error;
      }
      await pause(Math.min(500, 10 * 2 ** tries) * (0.5 + Math.random() / 2));
    }
  }

  #readTurn<T>(scope: Scope, work: (reading: Reading) => Promise<T>): Promise<T> {
    const studio = typeof scope === 'object' && 'logbook' in scope ? scope.logbook : undefined;
    return this.#kysely
      .transaction()
      .setIsolationLevel('repeatable read')
      .setAccessMode('read only')
      .execute(async (db) => {
        const [row] = studio === undefined ? [] : await versionOf(db, { studio });
        const snapshots = studio && row ? this.#pages.at(studio, row.version) : scratch();
        return this.#within.run(() => work({ db, snapshots }));
      });
  }

  /** Together at first; when that fails, each alone, so that one that fails does so alone. */
  async #writeAll(studio: StudioId, jobs: readonly WriteJob[]): Promise<void> {
    const giveUpAt = performance.now() + patienceMs;
    let left = jobs;
    if (jobs.length > 1)
      try {
        await this.#connections.pass('', () => this.#writeTurn(studio, jobs));
        left = [];
      } catch (error) {
        if (performance.now() >= giveUpAt) return jobs.forEach((job) => job.fail(error));
      }
    for (const job of left)
      await this.#untilPassed(() => this.#writeTurn(studio, [job])).catch((error: unknown) =>
        job.fail(error),
      );
  }

  async #writeTurn(studio: StudioId | undefined, jobs: readonly WriteJob[]): Promise<void> {
    let ended: { xid: string; acknowledge(): void } | undefined;
    let unkept: (() => void) | undefined;
    try {
      await this.#kysely
        .transaction()
        .setIsolationLevel('read committed')
        .execute(async (db) => {
          const { xid, version } = await begin(db, studio);
          const drafts = new DraftSnapshots(studio ? this.#pages.at(studio, version) : scratch());
          const done: Done[] = [];
          for (const job of jobs) done.push(await this.#runOne(job, db, drafts));
          const acknowledge = () => {
            for (const each of done) each.acknowledge();
          };
          if (done.every(({ changes }) => changes === 'nothing')) {
            unkept = acknowledge;
            throw new NotKept();
          }
          const raised = done.some(({ changes }) => changes === 'logbook') ? version + 1 : version;
          if (studio && raised > version) await raise(db, { studio, version: raised });
          ended = {
            xid,
            acknowledge: () => {
              if (studio) drafts.keep(this.#pages.at(studio, raised));
              acknowledge();
            },
          };
        });
    } catch (error) {
      if (error instanceof NotKept && unkept) return unkept();
      if (!ended || !isUnsure(error)) throw error;
      if (studio) this.#pages.drop(studio);
      if (!(await this.#wasCommitted(ended.xid))) throw error;
    }
    ended?.acknowledge();
  }

  /** What is not kept of one job goes, and the others' stays. */
  async #runOne(job: WriteJob, db: Transaction<Tables>, below: SnapshotCache): Promise<Done> {
    const snapshots = new DraftSnapshots(below);
    await setSavepoint(db, {});
    const { keep, evenSo, acknowledge } = await job.run({ db, snapshots });
    if (keep) snapshots.keep();
    else {
      await goBack(db, {});
      await evenSo?.(db);
    }
    await releaseSavepoint(db, {});
    if (keep) return { acknowledge, changes: job.isLogbook ? 'logbook' : 'rows' };
    return { acknowledge, changes: evenSo ? 'rows' : 'nothing' };
  }

  /** The connection was lost during the commit: only the server knows how it ended. */
  async #wasCommitted(xid: string): Promise<boolean> {
    const giveUpAt = performance.now() + patienceMs;
    for (;;) {
      try {
        const { status } = await this.#kysely
          .selectNoFrom(sql<string | null>`pg_xact_status(${xid}::xid8)`.as('status'))
          .executeTakeFirstOrThrow();
        if (status !== 'in progress') return status === 'committed';
      } catch (error) {
        if (!isPassing(error)) return false;
        if (performance.now() >= giveUpAt) throw error;
      }
      await pause(100);
    }
  }
}
