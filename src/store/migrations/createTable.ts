import { sql, type CreateTableBuilder, type Transaction } from 'kysely';
import type { Tables } from './tables.ts';

/** Not null unless it says so. `key` is a primary key of one column, `studio` the id of a studio. */
type Type = 'text' | 'integer' | 'bigint';
type Column = Type | `${Type} null` | `${Type} key` | 'studio';

const typeOf = (column: Column): Type =>
  (['integer', 'bigint'] as const).find((type) => column.startsWith(type)) ?? 'text';

interface Rest {
  /** The primary key, where it has several columns. */
  key?: [string, ...string[]];
  keyName?: string;
  /** Columns that are the key of a row in another table. */
  refers?: { name: string; columns: [string, ...string[]]; to: string; key: [string, ...string[]] };
  /** With a rowid, where rows can be over a kilobyte: without one, each of them would take a whole extra page. */
  rowid?: true;
}

/** Makes a table with its columns in this order. */
export const createTable = async (
  db: Transaction<Tables>,
  name: string,
  columns: Readonly<Record<string, Column>>,
  { key, keyName = `${name}_key`, refers, rowid }: Rest = {},
): Promise<void> => {
  let table: CreateTableBuilder<string, string> = db.schema.createTable(name);
  for (const [column, what] of Object.entries(columns))
    table = table.addColumn(column, typeOf(what), (made) => {
      if (what.endsWith('key')) return made.primaryKey();
      if (what.endsWith('null')) return made;
      return what === 'studio' ? made.notNull().references('studios.id') : made.notNull();
    });
  if (key) table = table.addPrimaryKeyConstraint(keyName, key);
  if (refers) table = table.addForeignKeyConstraint(refers.name, refers.columns, refers.to, refers.key);
  await (rowid ? table : table.modifyEnd(sql`without rowid`)).execute();
};

export const createIndex = (db: Transaction<Tables>, name: string, table: string, columns: string[]) =>
  db.schema.createIndex(name).on(table).columns(columns);
