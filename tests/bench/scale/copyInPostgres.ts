import pg from 'pg';
import { v7 as uuidv7 } from 'uuid';
import { atOnce, copiedColumns, copiedTables, type Tell } from './copiedTables.ts';

const template =
  "select studio_id from studio_identities where platform = 'bench' and external_id = 'template'";

/** One statement a table, which copies the template's rows once for each new id. */
const copying = async (client: pg.Client): Promise<string[]> => {
  const statements: string[] = [];
  for (const table of copiedTables) {
    const { rows } = await client.query<{ name: string }>(
      'select column_name as name from information_schema.columns where table_name = $1 order by ordinal_position',
      [table],
    );
    const columns = copiedColumns(
      table,
      rows.map(({ name }) => name),
    );
    const taken = columns.map((name) => (name === 'studio_id' ? 'fresh.id' : `one.${name}`));
    // As they come in over the months: the entries of a hundred studios mixed, so that one bucket's lie far apart.
    const order = table === 'events' ? 'order by one.seq, one.stream_no' : '';
    statements.push(
      `insert into ${table} (${columns.join(', ')}) select ${taken.join(', ')}
       from unnest($1::text[]) as fresh (id) cross join ${table} as one where one.studio_id = $2 ${order}`,
    );
  }
  return statements;
};

/** The same as for a file. While this connection loads, commits do not wait for the disk and references are not checked. */
export const copyInPostgres = async (address: string, wanted: number, tell: Tell): Promise<void> => {
  const client = new pg.Client(address);
  await client.connect();
  try {
    await client.query('set synchronous_commit = off');
    await client.query('set session_replication_role = replica');
    const [found] = (await client.query<{ studio_id: string }>(template)).rows;
    if (found === undefined) throw new Error('the database has no studio to copy');
    const copies = await copying(client);
    const made = await client.query<{ n: number }>('select count(*)::int as n from studios');
    const copy = async (first: number, after: number): Promise<number> => {
      const numbers = Array.from({ length: after - first }, (_, i) => String(first + i));
      const ids = numbers.map(() => uuidv7());
      let rows = 0;
      await client.query('begin');
      await client.query(
        `insert into studios (id, name, created_at) select fresh.id, 'Studio ' || fresh.n, one.created_at
         from unnest($1::text[], $3::text[]) as fresh (id, n) cross join studios as one where one.id = $2`,
        [ids, found.studio_id, numbers],
      );
      await client.query(
        `insert into studio_identities (platform, external_id, studio_id)
         select 'bench', fresh.n, fresh.id from unnest($1::text[], $2::text[]) as fresh (id, n)`,
        [ids, numbers],
      );
      for (const each of copies) rows += (await client.query(each, [ids, found.studio_id])).rowCount ?? 0;
      await client.query('commit');
      return rows;
    };
    for (let n = made.rows[0]?.n ?? 0; n < wanted; n += atOnce) {
      const began = performance.now();
      const after = Math.min(wanted, n + atOnce);
      const rows = await copy(n, after);
      tell(after, (rows * 1_000) / (performance.now() - began));
    }
    await client.query('vacuum analyze');
  } finally {
    await client.end();
  }
};
