import Sqlite from 'better-sqlite3';
import { Kysely } from 'kysely';
import { ImmediateDialect } from './dialect.ts';
import { migrations } from '../../migrations/migrations.ts';
import { StoreProblem } from '../storeProblem.ts';
import type { Tables } from '../../migrations/tables.ts';

/** "glzr": marks a SQLite file as ours. */
export const applicationId = 0x676c7a72;

export interface Database {
  readonly file: string;
  readonly sqlite: Sqlite.Database;
  readonly kysely: Kysely<Tables>;
}

const number = (value: unknown): number => (typeof value === 'number' ? value : Number.NaN);
const pragma = (sqlite: Sqlite.Database, name: string): number =>
  number(sqlite.pragma(name, { simple: true }));

export const schemaVersion = (sqlite: Sqlite.Database): number => pragma(sqlite, 'user_version');

/** A number that changes when another connection has written: our caches may be stale then. Read at every turn. */
export const dataVersionOf = (sqlite: Sqlite.Database): (() => number) => {
  const statement = sqlite.prepare('pragma data_version').pluck();
  return () => number(statement.get());
};

export interface Savepoint {
  set(): void;
  goBack(): void;
  release(): void;
}

/** Each job of a transaction has a savepoint, so that it can be rolled back alone. Prepared once, since every job needs it. */
export const savepointIn = (sqlite: Sqlite.Database): Savepoint => {
  const [set, back, release] = ['savepoint job', 'rollback to savepoint job', 'release savepoint job'].map(
    (sql) => sqlite.prepare(sql),
  );
  return { set: () => void set?.run(), goBack: () => void back?.run(), release: () => void release?.run() };
};

/** Only reads, so that a file that belongs to another program is not changed. */
const refuseForeign = (sqlite: Sqlite.Database, file: string, known: number) => {
  const tables = number(sqlite.prepare('select count(*) from sqlite_schema').pluck().get());
  if (tables > 0 && pragma(sqlite, 'application_id') !== applicationId) {
    throw new StoreProblem('not-ours', file, 'a database of another program');
  }
  const version = schemaVersion(sqlite);
  if (version > known) {
    throw new StoreProblem('newer-schema', file, `schema ${version}, this release knows ${known}`);
  }
};

/**
 * The driver's build uses NORMAL in WAL mode unless FULL is set afterwards. The busy timeout is short because waiting
 * would block everything else. The cache is small: the system keeps the file's pages too. The log is carried over into the
 * file every 16 MB: a few pages are written by every entry, and are carried over once. What is deleted is overwritten.
 */
const pragmas = [
  'busy_timeout = 100',
  'journal_mode = WAL',
  'synchronous = FULL',
  'foreign_keys = ON',
  'cache_size = -16384',
  'wal_autocheckpoint = 4000',
  'secure_delete = ON',
];

const opened = (
  file: string,
  options: Sqlite.Options,
  prepare: (sqlite: Sqlite.Database) => void,
): Database => {
  const sqlite = new Sqlite(file, { timeout: 100, ...options });
  try {
    prepare(sqlite);
  } catch (error) {
    sqlite.close();
    throw error;
  }
  return { file, sqlite, kysely: new Kysely<Tables>({ dialect: new ImmediateDialect(sqlite) }) };
};

/** Opens the file for its owner; `known` is the newest schema that this release can read. */
export const openDatabase = (file: string, known: number): Database =>
  opened(file, {}, (sqlite) => {
    refuseForeign(sqlite, file, known);
    for (const each of pragmas) sqlite.pragma(each);
  });

/** Opens the file read-only, while its owner may be running; any schema up to this release's. */
export const openForReading = (file: string): Database =>
  opened(file, { readonly: true, fileMustExist: true, timeout: 5_000 }, (sqlite) =>
    refuseForeign(sqlite, file, migrations.length),
  );

/** The same, for the newest schema only. */
export const openCurrentForReading = (file: string): Database => {
  const database = openForReading(file);
  if (schemaVersion(database.sqlite) >= migrations.length) return database;
  database.sqlite.close();
  throw new StoreProblem('older-schema', file, 'not migrated yet');
};
