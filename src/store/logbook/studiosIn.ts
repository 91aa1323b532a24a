import type { StudioId } from '../../studio/ids.ts';
import { openCurrentForReading } from '../engine/database.ts';
import { asStoreProblem } from '../engine/storeProblem.ts';

/** The studios in a file, oldest first; its owner may be running. */
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
