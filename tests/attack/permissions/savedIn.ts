import { createHash } from 'node:crypto';
import Sqlite from 'better-sqlite3';

/**
 * What is no part of the studio’s book: what phones were shown, when they were last seen, and how much was logged on a day,
 * which is dropped the day after.
 */
const aside = ['room_posts', 'room_sessions', 'daily_entries'];

/** A fingerprint of everything that a file holds, to see that nothing was saved. */
export const savedIn = (file: string): string => {
  const database = new Sqlite(file, { readonly: true });
  const tables = database
    .prepare<[], { name: string }>("select name from sqlite_master where type = 'table' order by name")
    .all()
    .filter(({ name }) => !aside.includes(name));
  const hash = createHash('sha256');
  for (const { name } of tables)
    hash.update(`${name} ${JSON.stringify(database.prepare(`select * from "${name}"`).all())}\n`);
  database.close();
  return hash.digest('hex');
};
