import Sqlite from 'better-sqlite3';
import { v7 as uuidv7 } from 'uuid';

/** The tables of a studio's own rows, in the order in which they may be filled. Replies are kept for a week, so they are left out. */
const tables = ['members', 'member_identities', 'streams', 'events', 'notes', 'reminders'] as const;
const atOnce = 20;

/**
 * Copies a studio's rows until there are as many studios as wanted. Twenty are committed at a time, so that a copy that was
 * stopped goes on where it was.
 */
export const copyStudios = (
  file: string,
  wanted: number,
  tell: (made: number, rowsPerSecond: number) => void,
): void => {
  const sqlite = new Sqlite(file);
  sqlite.pragma('journal_mode = WAL');
  sqlite.pragma('synchronous = NORMAL');
  sqlite.pragma('cache_size = -262144');
  const template = sqlite
    .prepare<[], string>(
      "select studio_id from studio_identities where platform = 'bench' and external_id = 'template'",
    )
    .pluck()
    .get();
  if (template === undefined) throw new Error(`${file} has no studio to copy`);
  const copies = tables.map((table) => {
    const columns = sqlite
      .prepare<[string], string>('select name from pragma_table_info(?)')
      .pluck()
      .all(table)
      .filter((name) => !(table === 'reminders' && name === 'id'));
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
    tell(n + atOnce, (rows * 1_000) / (performance.now() - began));
  }
  sqlite.pragma('wal_checkpoint(TRUNCATE)');
  sqlite.close();
};
