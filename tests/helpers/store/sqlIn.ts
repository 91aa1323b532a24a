import Sqlite from 'better-sqlite3';
import { isAddress } from '../../../src/store/engine/isAddress.ts';
import { queryAt } from '../postgres/databases.ts';

/**
 * Runs a statement behind the store's back and answers its rows; values stand as `?`. On PostgreSQL every studio's
 * version is raised after a change, as by every writer.
 */
export const sqlIn = async (
  where: string,
  statement: string,
  ...values: readonly (string | number | null)[]
): Promise<unknown[]> => {
  if (!isAddress(where)) {
    const sqlite = new Sqlite(where);
    try {
      const prepared = sqlite.prepare(statement);
      if (prepared.reader) return prepared.all(...values);
      prepared.run(...values);
      return [];
    } finally {
      sqlite.close();
    }
  }
  let count = 0;
  const rows = await queryAt(
    where,
    statement.replaceAll('?', () => `$${(count += 1)}`),
    values,
  );
  if (!/^select/i.test(statement)) await queryAt(where, 'update studios set version = version + 1');
  return rows;
};
