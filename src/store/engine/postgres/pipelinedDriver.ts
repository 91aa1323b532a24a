import {
  type CompiledQuery,
  type DatabaseConnection,
  type Driver,
  type QueryResult,
  type TransactionSettings,
} from 'kysely';
import type pg from 'pg';
import { isPrepared } from '../compiledOnce.ts';
import { withoutNul } from '../withoutNul.ts';

/** PostgreSQL refuses the NUL character in text, so it is left out of whatever is asked or stored. */
const plain = (values: readonly unknown[]): unknown[] =>
  values.map((value) => (typeof value === 'string' ? withoutNul(value) : value));

/** So that a long import neither fills the memory nor keeps everybody else from their turn. */
const mostUnanswered = 64;

/** A connection, for as long as somebody has it. The answer to a query that nobody waits for is looked at with the commit. */
class PipelinedConnection implements DatabaseConnection {
  readonly #client: pg.PoolClient;
  #unanswered: Promise<unknown>[] = [];
  #isReadOnly = false;
  #broken: Error | undefined;

  constructor(client: pg.PoolClient) {
    this.#client = client;
  }

  async executeQuery<Row>(query: CompiledQuery): Promise<QueryResult<Row>> {
    const prepared = isPrepared(query) ? query : undefined;
    const asked = this.#client.query({
      text: query.sql,
      values: plain(query.parameters),
      ...(prepared && { name: prepared.statement }),
    });
    if (prepared?.isAwaited === false) {
      this.#later(asked);
      if (this.#unanswered.length >= mostUnanswered) await this.#answered();
      return { rows: [] };
    }
    try {
      const { rows, rowCount } = await asked;
      return { rows, numAffectedRows: BigInt(rowCount ?? 0) };
    } catch (error) {
      // After an earlier query failed, this error only says that the transaction is aborted.
      await this.#answered();
      throw error;
    }
  }

  begin({ isolationLevel = 'read committed', accessMode = 'read write' }: TransactionSettings): void {
    this.#isReadOnly = accessMode === 'read only';
    this.#later(this.#client.query(`start transaction isolation level ${isolationLevel} ${accessMode}`));
  }

  async commit(): Promise<void> {
    const committed = this.#client.query('commit');
    committed.catch(() => undefined);
    // A transaction that only read has nothing to lose.
    if (this.#isReadOnly) return;
    await this.#answered();
    if ((await committed).command !== 'COMMIT') throw new Error('The transaction was rolled back.');
  }

  async rollback(): Promise<void> {
    this.#unanswered = [];
    try {
      await this.#client.query('rollback');
    } catch (error) {
      this.#broken = error instanceof Error ? error : new Error(String(error));
      throw error;
    }
  }

  release(): void {
    this.#client.release(this.#broken);
  }

  streamQuery(): never {
    throw new Error('Rows are read a page at a time.');
  }

  #later(asked: Promise<unknown>): void {
    asked.catch(() => undefined);
    this.#unanswered.push(asked);
  }

  /** Throws what went wrong first. */
  async #answered(): Promise<void> {
    await Promise.all(this.#unanswered.splice(0));
  }
}

const ours = (connection: DatabaseConnection): PipelinedConnection => {
  if (connection instanceof PipelinedConnection) return connection;
  throw new Error('A connection of another driver.');
};

/** Sends a query before the last one is answered, where nobody needs the answer: each round trip is a wait. */
export class PipelinedDriver implements Driver {
  readonly #pool: pg.Pool;

  constructor(pool: pg.Pool) {
    this.#pool = pool;
  }

  async init(): Promise<void> {}

  async acquireConnection(): Promise<DatabaseConnection> {
    return new PipelinedConnection(await this.#pool.connect());
  }

  async beginTransaction(connection: DatabaseConnection, settings: TransactionSettings): Promise<void> {
    ours(connection).begin(settings);
  }

  commitTransaction(connection: DatabaseConnection): Promise<void> {
    return ours(connection).commit();
  }

  rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    return ours(connection).rollback();
  }

  async releaseConnection(connection: DatabaseConnection): Promise<void> {
    ours(connection).release();
  }

  destroy(): Promise<void> {
    return this.#pool.end();
  }
}
