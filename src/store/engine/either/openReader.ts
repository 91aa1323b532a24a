import { isAddress } from '../isAddress.ts';
import { openSqliteReader } from '../sqlite/sqliteReader.ts';
import type { Reader } from '../turns.ts';

/** Opens a file or a database to read from it; its owner may be running. */
export const openReader = async (where: string): Promise<Reader> => {
  if (!isAddress(where)) return openSqliteReader(where);
  const { openPostgresReader } = await import('../postgres/postgresReader.ts');
  return openPostgresReader(where);
};
