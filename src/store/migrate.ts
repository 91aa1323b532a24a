import { applicationId, schemaVersion, type Database } from './engine/database.ts';
import type { Migration } from './migrations/migration.ts';
import { asStoreProblem, StoreProblem } from './engine/storeProblem.ts';
import { vacuumInto } from './engine/vacuumInto.ts';

/**
 * Brings a database up to date: all steps or none. A file that already holds something is copied to
 * `<file>.before-N` first, N being the first step taken: to go back is to put that copy in its place.
 */
export const migrate = async (
  { file, sqlite, kysely }: Database,
  steps: readonly Migration[],
): Promise<void> => {
  const from = schemaVersion(sqlite);
  if (from >= steps.length) return;
  try {
    if (from > 0) vacuumInto(sqlite, `${file}.before-${from + 1}`);
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
