import Sqlite from 'better-sqlite3';
import { Kysely } from 'kysely';
import { ImmediateDialect } from './dialect.ts';
import { migrations } from '../migrations/migrations.ts';
import { StoreProblem } from './storeProblem.ts';
import type { Tables } from '../migrations/tables.ts';

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

/** A number that changes when another connection has written: what we remember may then be out of date. Asked with every turn. */
export const dataVersionOf = (sqlite: Sqlite.Database): (() => number) => {
  const statement = sqlite.prepare('pragma data_version').pluck();
  return () => number(statement.get());
};

/** Only reads, so that a file that is not ours to open stays as it was. */
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

/** The driver's build falls back to NORMAL in WAL unless FULL is set after it; a long wait here would stop all else. */
const pragmas = [
  'busy_timeout = 100',
  'journal_mode = WAL',
  'synchronous = FULL',
  'foreign_keys = ON',
  'cache_size = -65536',
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

/** For its owner; `known` is the newest schema that this release can read. */
export const openDatabase = (file: string, known: number): Database =>
  opened(file, {}, (sqlite) => {
    refuseForeign(sqlite, file, known);
    for (const each of pragmas) sqlite.pragma(each);
  });

/** For looking only, beside the owner; of any schema that this release knows. */
export const openForReading = (file: string): Database =>
  opened(file, { readonly: true, fileMustExist: true, timeout: 5_000 }, (sqlite) =>
    refuseForeign(sqlite, file, migrations.length),
  );

/** The same, where only the newest schema will do. */
export const openCurrentForReading = (file: string): Database => {
  const database = openForReading(file);
  if (schemaVersion(database.sqlite) >= migrations.length) return database;
  database.sqlite.close();
  throw new StoreProblem('older-schema', file, 'not migrated yet');
};
