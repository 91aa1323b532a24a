import type { Migration } from '../../migrations/migration.ts';
import { isAddress } from '../isAddress.ts';
import { openSqlite } from '../sqlite/openSqlite.ts';
import { openSqliteReader } from '../sqlite/sqliteReader.ts';
import type { Engine, Reader } from '../turns.ts';

/** Opens a file or a database, after creating or migrating it if necessary. Throws a StoreProblem. */
export const openEngine = async (
  where: string,
  options: { waitMs: number; migrations: readonly Migration[] },
): Promise<Engine> => {
  if (!isAddress(where)) return openSqlite(where, options);
  // Loaded only when it is used: a start on a file is quicker without it.
  const { openPostgres } = await import('../postgres/openPostgres.ts');
  return openPostgres(where, options);
};

/** Opens a file or a database to read from it; its owner may be running. */
export const openReader = async (where: string): Promise<Reader> => {
  if (!isAddress(where)) return openSqliteReader(where);
  const { openPostgresReader } = await import('../postgres/postgresReader.ts');
  return openPostgresReader(where);
};
