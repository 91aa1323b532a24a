import type Sqlite from 'better-sqlite3';
import {
  CompiledQuery,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type Driver,
  type SqliteDatabase,
  type SqliteDialectConfig,
  type SqliteStatement,
} from 'kysely';
import type { AnswersAtOnce } from '../compiledOnce.ts';

/**
 * Begins transactions with `immediate`: one that reads first and writes later would fail at once if somebody wrote in
 * between.
 */
class ImmediateDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }
}

const mostStatements = 200;

/** Caches prepared statements: preparing one takes longer than running it. */
const preparing = (sqlite: Sqlite.Database): SqliteDatabase => {
  const prepared = new Map<string, SqliteStatement>();
  return {
    close: () => void sqlite.close(),
    prepare: (sql) => {
      const known = prepared.get(sql);
      if (known) return known;
      if (prepared.size >= mostStatements) prepared.clear();
      const statement = sqlite.prepare<unknown[]>(sql);
      prepared.set(sql, statement);
      return statement;
    },
  };
};

class AdapterAtOnce extends SqliteAdapter implements AnswersAtOnce {
  readonly #database: SqliteDatabase;

  constructor(database: SqliteDatabase) {
    super();
    this.#database = database;
  }

  atOnce(sql: string, values: readonly unknown[]): unknown[] {
    const statement = this.#database.prepare(sql);
    if (statement.reader) return statement.all(values);
    statement.run(values);
    return [];
  }
}

export class ImmediateDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig & { database: SqliteDatabase };

  constructor(sqlite: Sqlite.Database) {
    const config = { database: preparing(sqlite) };
    super(config);
    this.#config = config;
  }

  override createAdapter(): SqliteAdapter {
    return new AdapterAtOnce(this.#config.database);
  }

  override createDriver(): Driver {
    return new ImmediateDriver(this.#config);
  }
}
