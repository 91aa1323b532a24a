import { createHash } from 'node:crypto';
import Sqlite from 'better-sqlite3';
import { isAddress } from '../../../src/store/engine/isAddress.ts';
import { everyTable } from '../../../src/store/move/everyTable.ts';
import { queryAt } from '../../helpers/postgres/databases.ts';

/**
 * What is no part of the studio’s book: what phones were shown, the lines behind buttons, which are written a moment after
 * the answer that shows them, when phones were last seen, how often somebody tried to come in, and how much was logged on a
 * day, which is dropped the day after.
 */
const aside = ['room_posts', 'held_lines', 'room_sessions', 'tries', 'daily_entries'];
const tables = everyTable.filter(({ name }) => !aside.includes(name));

const inDatabase = async (address: string): Promise<unknown> => {
  const asJson = tables.map(
    ({ name, key }) =>
      `(select json_agg(one order by ${key.map((column) => `one.${column}`).join(', ')})::text from ${name} one) as ${name}`,
  );
  return queryAt(address, `select ${asJson.join(', ')}`);
};

const inFile = (file: string): unknown => {
  const database = new Sqlite(file, { readonly: true });
  const rows = tables.map(({ name }) => [name, database.prepare(`select * from ${name}`).all()]);
  database.close();
  return rows;
};

/** A fingerprint of everything that a logbook holds, to see that nothing was saved. */
export const savedIn = async (where: string): Promise<string> => {
  const rows = isAddress(where) ? await inDatabase(where) : inFile(where);
  return createHash('sha256').update(JSON.stringify(rows)).digest('hex');
};
