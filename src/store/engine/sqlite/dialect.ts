import type Sqlite from 'better-sqlite3';
import {
  CompiledQuery,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type Driver,
  type SqliteDatabase,
  type SqliteDialectConfig,
  type SqliteStatement,
} from 'kysely';

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

export class ImmediateDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig;

  constructor(sqlite: Sqlite.Database) {
    const config = { database: preparing(sqlite) };
    super(config);
    this.#config = config;
  }

  override createDriver(): Driver {
    return new ImmediateDriver(this.#config);
  }
}
