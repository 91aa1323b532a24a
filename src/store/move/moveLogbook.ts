import { isDeepStrictEqual } from 'node:util';
import { sql, type Kysely, type Transaction } from 'kysely';
import { openEngine } from '../engine/either/openEngine.ts';
import { StoreProblem } from '../engine/storeProblem.ts';
import type { Reading } from '../engine/turns.ts';
import { migrations } from '../migrations/migrations.ts';
import type { Tables } from '../migrations/tables.ts';
import { everyStream, refold } from '../states/refold.ts';
import { everyTable, type TableName } from './everyTable.ts';
import { bareRow, rowsOf } from './rowsOf.ts';
import { sameRows } from './sameRows.ts';

export interface Moved {
  studios: number;
  streams: number;
  entries: number;
}

const copyTable = async (
  from: Kysely<Tables>,
  to: Transaction<Tables>,
  table: TableName,
): Promise<number> => {
  let count = 0;
  for await (const page of rowsOf(from, table)) {
    const rows = page.map((row) => bareRow(row, table));
    const columns = Object.keys(rows[0] ?? {});
    const values = rows.map((row) => sql`(${sql.join(columns.map((column) => row[column]))})`);
    await sql`
      insert into ${sql.table(table.name)} (${sql.join(columns.map((column) => sql.ref(column)))})
      values ${sql.join(values)}`.execute(to);
    count += rows.length;
  }
  return count;
};

/** Reads both sides again: every row must be the same, and every stream must fold to the same state. */
const compare = async (from: Kysely<Tables>, to: Kysely<Tables>, name: string): Promise<number> => {
  const differs = (what: string) => new StoreProblem('copy-differs', name, what);
  for (const table of everyTable) if (!(await sameRows(from, to, table))) throw differs(table.name);
  const streams = await everyStream(from);
  for (const stream of streams)
    if (!isDeepStrictEqual(await refold(from, stream), await refold(to, stream)))
      throw differs(`stream ${stream.stream} of ${stream.studio}`);
  return streams.length;
};

const copyAll = async ({ db: from }: Reading, to: Transaction<Tables>, name: string): Promise<Moved> => {
  const there = await to.selectFrom('studios').select('id').limit(1).execute();
  if (there.length > 0) throw new StoreProblem('not-empty', name, 'it holds a studio');
  // What a start without a studio has left there.
  await to.deleteFrom('kept').execute();
  const counts = new Map<string, number>();
  for (const table of everyTable) counts.set(table.name, await copyTable(from, to, table));
  const streams = await compare(from, to, name);
  return { studios: counts.get('studios') ?? 0, entries: counts.get('events') ?? 0, streams };
};

/**
 * Copies all studios to an empty file or database, while the source takes no writes. It is one transaction there: if it
 * is stopped anywhere, nothing is there, and it can be run again. The source stays as it is.
 */
export const moveLogbook = async (from: string, to: string): Promise<Moved> => {
  const options = { waitMs: 0, migrations };
  const source = await openEngine(from, options);
  try {
    const target = await openEngine(to, options);
    try {
      return await source.whileNobodyWrites((reading) =>
        target.turns.write('directory', async ({ db }) => ({
          keep: true,
          value: await copyAll(reading, db, target.turns.name),
        })),
      );
    } finally {
      await target.close();
    }
  } finally {
    await source.close();
  }
};
