import { isDeepStrictEqual } from 'node:util';
import type { Kysely } from 'kysely';
import type { Tables } from '../migrations/tables.ts';
import type { TableName } from './everyTable.ts';
import { bareRow, rowsOf, type Row } from './rowsOf.ts';

async function* singly(db: Kysely<Tables>, table: TableName): AsyncGenerator<Row> {
  for await (const rows of rowsOf(db, table)) for (const row of rows) yield bareRow(row, table);
}

/** Whether two tables hold the same rows. Both are read in step, so that neither side waits long for the other. */
export const sameRows = async (
  from: Kysely<Tables>,
  to: Kysely<Tables>,
  table: TableName,
): Promise<boolean> => {
  const copies = singly(to, table);
  for await (const row of singly(from, table)) {
    const copy = await copies.next();
    if (copy.done === true || !isDeepStrictEqual({ ...row }, { ...copy.value })) return false;
  }
  return (await copies.next()).done === true;
};
