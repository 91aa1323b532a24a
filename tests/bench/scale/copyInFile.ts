import Sqlite from 'better-sqlite3';
import { v7 as uuidv7 } from 'uuid';
import { atOnce, copiedColumns, copiedTables, type Tell } from './copiedTables.ts';

/**
 * Copies a studio's rows until there are as many studios as wanted. A hundred are committed at a time, so that a copy that was
 * stopped goes on where it was. The rows are known to be sound, so no reference is checked; and nothing waits for the disk,
 * because after a power failure one loads anew.
 */
export const copyInFile = (file: string, wanted: number, tell: Tell): void => {
  const sqlite = new Sqlite(file);
  sqlite.pragma('journal_mode = WAL');
  sqlite.pragma('synchronous = OFF');
  sqlite.pragma('foreign_keys = OFF');
  sqlite.pragma('cache_size = -65536');
  const template = sqlite
    .prepare<[], string>(
      "select studio_id from studio_identities where platform = 'bench' and external_id = 'template'",
    )
    .pluck()
    .get();
  if (template === undefined) throw new Error(`${file} has no studio to copy`);
  const copies = copiedTables.map((table) => {
    const columns = copiedColumns(
      table,
      sqlite.prepare<[string], string>('select name from pragma_table_info(?)').pluck().all(table),
    );
    const taken = columns.map((name) => (name === 'studio_id' ? '?' : name));
    return sqlite.prepare(
      `insert into ${table} (${columns.join(', ')}) select ${taken.join(', ')} from ${table} where studio_id = ?`,
    );
  });
  const studio = sqlite.prepare(
    'insert into studios (id, name, created_at) select ?, ?, created_at from studios where id = ?',
  );
  const identity = sqlite.prepare(
    "insert into studio_identities (platform, external_id, studio_id) values ('bench', ?, ?)",
  );
  const made = sqlite.prepare<[], number>('select count(*) from studios').pluck();
  const copy = sqlite.transaction((first: number, after: number): number => {
    let rows = 0;
    for (let n = first; n < after; n += 1) {
      const id = uuidv7();
      studio.run(id, `Studio ${n}`, template);
      identity.run(String(n), id);
      for (const each of copies) rows += each.run(id, template).changes;
    }
    return rows;
  });
  for (let n = made.get() ?? 0; n < wanted; n = made.get() ?? wanted) {
    const began = performance.now();
    const rows = copy(n, Math.min(wanted, n + atOnce));
    tell(Math.min(wanted, n + atOnce), (rows * 1_000) / (performance.now() - began));
  }
  sqlite.pragma('wal_checkpoint(TRUNCATE)');
  sqlite.close();
};
