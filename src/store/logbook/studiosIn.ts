import type { StudioId } from '../../studio/ids.ts';
import { everyStudio } from '../people/identities.ts';
import { openReader } from '../engine/either/openEngine.ts';

/** The studios in a file or a database, oldest first; its owner may be running. */
export const studiosIn = async (where: string): Promise<{ id: StudioId; name: string }[]> => {
  const reader = await openReader(where);
  try {
    return await reader.read(({ db }) => everyStudio(db));
  } finally {
    await reader.close();
  }
};
