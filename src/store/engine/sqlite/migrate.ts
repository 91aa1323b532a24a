import { applicationId, schemaVersion, type Database } from './database.ts';
import { emptyLog } from './emptyLog.ts';
import type { Migration } from '../../migrations/migration.ts';
import { asStoreProblem, StoreProblem } from '../storeProblem.ts';
import { vacuumInto } from './vacuumInto.ts';

/**
 * Migrates a database: all steps or none. A file with data is copied to `<file>.before-N` first, N being the first
 * step. To go back, put that copy in its place.
 */
export const migrate = async (database: Database, steps: readonly Migration[]): Promise<void> => {
  const { file, sqlite, kysely } = database;
  const from = schemaVersion(sqlite);
  if (from >= steps.length) return;
  try {
    if (from > 0) {
      vacuumInto(sqlite, `${file}.before-${from + 1}`);
      // An older release left in the file what it deleted.
      sqlite.exec('vacuum');
      emptyLog(database);
    }
    await kysely.transaction().execute(async (tx) => {
      for (const step of steps.slice(from)) await step(tx);
      sqlite.pragma(`application_id = ${applicationId}`);
      sqlite.pragma(`user_version = ${steps.length}`);
    });
  } catch (error) {
    const problem = asStoreProblem(error, file);
    if (problem instanceof StoreProblem) throw problem;
    throw new StoreProblem('failed-migration', file, String(error), error);
  }
};
