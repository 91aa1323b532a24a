import { setTimeout as pause } from 'node:timers/promises';
import { sql, type Kysely, type Transaction } from 'kysely';
import type { Instant, StudioId } from '../../../studio/ids.ts';
import type { Tables } from '../../migrations/tables.ts';
import { compiledOnce } from '../compiledOnce.ts';
import { DraftSnapshots, MemorySnapshotCache, type Snapshot } from '../snapshotCache.ts';
import { StoreProblem } from '../storeProblem.ts';
import { TurnGuard } from '../turnGuard.ts';
import type { Reading, Scope, TransactionOutcome, Turns, Writing } from '../turns.ts';
import { announce } from './announcements.ts';
import { Lanes } from './lanes.ts';
import { Pages } from './pages.ts';
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

interface Begun {
  /** The transaction's own number, by which the server knows later whether it was committed. */
  xid: string;
  version: number;
}

const ownNumber = sql<string>`pg_current_xact_id()::text`.as('xid');
const lock = compiledOnce<{ studio: StudioId }, Begun>((db, value) =>
  db.selectFrom('studios').where('id', '=', value('studio')).select(['version', ownNumber]).forUpdate(),
);
const versionOf = compiledOnce<{ studio: StudioId }, { version: number }>((db, value) =>
  db.selectFrom('studios').where('id', '=', value('studio')).select('version'),
);
const raise = compiledOnce<{ studio: StudioId; version: number }>(
  (db, value) =>
    db
      .updateTable('studios')
      .set({ version: value('version') })
      .where('id', '=', value('studio')),
  { isAwaited: false },
);

/** Waits until this studio's row is free. From then on nobody else writes to the studio. */
const begin = async (db: Transaction<Tables>, studio: StudioId | undefined): Promise<Begun> => {
  const [locked] = studio === undefined ? [] : await lock(db, { studio });
  if (locked) return locked;
  const { xid } = await db.selectNoFrom(ownNumber).executeTakeFirstOrThrow();
  return { xid, version: 0 };
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
  readonly #pages = new Pages(mostStudiosRemembered);
  /** In this process a studio's writes wait here, and not each on a connection of its own. */
  readonly #writes = new Lanes(1);
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
    const turn = () => this.#untilPassed(() => this.#writeTurn(scope, work));
    const studio = studioIn(scope);
    return this.#take(() => (studio === undefined ? turn() : this.#writes.pass(studio, turn)));
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

  async #writeTurn<T>(scope: Scope, work: (writing: Writing) => Promise<TransactionOutcome<T>>): Promise<T> {
    const studio = studioIn(scope);
    let ended: { xid: string; acknowledge(): T } | undefined;
    let notKept: TransactionOutcome<T> | undefined;
    try {
      await this.#kysely
        .transaction()
        .setIsolationLevel('read committed')
        .execute(async (db) => {
          const { xid, version } = await begin(db, studio);
          const drafts = new DraftSnapshots(studio ? this.#pages.at(studio, version) : scratch());
          const outcome = await this.#within.run(() => work({ db, snapshots: drafts }));
          const { keep, value } = outcome;
          if (!keep) {
            notKept = outcome;
            throw new NotKept();
          }
          const raised = 'logbook' in Object(scope) ? version + 1 : version;
          if (studio && raised > version) await raise(db, { studio, version: raised });
          const acknowledge = () => {
            if (studio) drafts.keep(this.#pages.at(studio, raised));
            return value;
          };
          ended = { xid, acknowledge };
        });
    } catch (error) {
      if (error instanceof NotKept && notKept) {
        const { evenSo, value } = notKept;
        if (evenSo) await this.#kysely.transaction().execute(evenSo);
        return value;
      }
      if (!ended || !isUnsure(error)) throw error;
      if (studio) this.#pages.drop(studio);
      if (!(await this.#wasCommitted(ended.xid))) throw error;
    }
    if (!ended) throw new Error('A transaction was committed that had not ended.');
    return ended.acknowledge();
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
