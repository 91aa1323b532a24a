import { createHash } from 'node:crypto';
import type { Kysely } from 'kysely';
import type { Tables } from '../migrations/tables.ts';
import type { TableName } from './everyTable.ts';
import { bareRow, rowsOf } from './rowsOf.ts';

/** A hash of all of a table's rows: two tables with the same hash hold the same. */
export const hashOf = async (db: Kysely<Tables>, table: TableName): Promise<string> => {
  const hash = createHash('sha256');
  for await (const rows of rowsOf(db, table))
    for (const row of rows)
      hash.update(
        `${JSON.stringify(Object.entries(bareRow(row, table)).sort(([a], [b]) => (a < b ? -1 : 1)))}\n`,
      );
  return hash.digest('hex');
};
