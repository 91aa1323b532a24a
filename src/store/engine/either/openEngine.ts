import type { Migration } from '../../migrations/migration.ts';
import { isAddress } from '../isAddress.ts';
import { openSqlite } from '../sqlite/openSqlite.ts';
import type { Engine } from '../turns.ts';

export interface EngineOptions {
  waitMs: number;
  migrations: readonly Migration[];
}

/** Opens a file or a database, after creating or migrating it if necessary. Throws a StoreProblem. */
export const openEngine = async (where: string, options: EngineOptions): Promise<Engine> => {
  if (!isAddress(where)) return openSqlite(where, options);
  // Loaded only when it is used: a start on a file is quicker without it.
  const { openPostgres } = await import('../postgres/openPostgres.ts');
  return openPostgres(where, options);
};
