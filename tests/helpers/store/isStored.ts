import { isAddress } from '../../../src/store/engine/isAddress.ts';
import { queryAt } from '../postgres/databases.ts';
import { standsIn } from './fileBytes.ts';

/** Whether a word is anywhere in the bytes of a file, or in any row of a database. */
export const isStored = async (where: string, word: string): Promise<boolean> => {
  if (!isAddress(where)) return standsIn(where, word);
  const tables = await queryAt(where, "select tablename from pg_tables where schemaname = 'public'");
  const searches = tables.map(
    ({ tablename }) => `select 1 from "${String(tablename)}" as row where row::text like $1`,
  );
  return (await queryAt(where, searches.join(' union all '), [`%${word}%`])).length > 0;
};
