import type { StudioId } from '../../studio/ids.ts';
import { openCurrentForReading } from '../engine/database.ts';
import { asStoreProblem } from '../engine/storeProblem.ts';

/** The studios of a file, oldest first, whoever owns it. */
export const studiosIn = async (file: string): Promise<{ id: StudioId; name: string }[]> => {
  try {
    const { sqlite, kysely } = openCurrentForReading(file);
    try {
      const all = kysely.selectFrom('studios').select(['id', 'name']);
      return await all.orderBy('created_at').orderBy('id').execute();
    } finally {
      sqlite.close();
    }
  } catch (error) {
    throw asStoreProblem(error, file);
  }
};
