import { sql, type Kysely } from 'kysely';
import type { Tables } from '../migrations/tables.ts';
import type { TableName } from './everyTable.ts';

/** A small page, because some rows hold a whole answer. */
const atOnce = 200;

export type Row = Readonly<Record<string, unknown>>;

/** A table's rows in the order of its key, a page at a time. */
export async function* rowsOf(db: Kysely<Tables>, { name, key }: TableName): AsyncGenerator<readonly Row[]> {
  const columns = sql.join(key.map((column) => sql.ref(column)));
  let last: Row | undefined;
  do {
    const after = last;
    const beyond = after
      ? sql`where (${columns}) > (${sql.join(key.map((column) => after[column]))})`
      : sql``;
    const { rows } = await sql<Row>`
      select * from ${sql.table(name)} ${beyond} order by ${columns} limit ${sql.lit(atOnce)}`.execute(db);
    if (rows.length > 0) yield rows;
    last = rows.length < atOnce ? undefined : rows.at(-1);
  } while (last !== undefined);
}

/** A row without the number that its database has given it. */
export const bareRow = (row: Row, { isNumbered }: TableName): Row => {
  const { id, ...rest } = row;
  return isNumbered ? rest : { ...rest, ...(id !== undefined && { id }) };
};
