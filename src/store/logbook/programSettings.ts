import type { Transaction } from 'kysely';
import { writeAll, type Turns } from '../engine/turns.ts';
import type { Tables } from '../migrations/tables.ts';

/** Settings that the program remembers between starts. */
export interface ProgramSettings {
  get(name: string): Promise<string | undefined>;
  set(name: string, value: string): Promise<void>;
  /** The value; a new one when there is none yet. Of several processes that ask at once, each gets the same. */
  getOrSet(name: string, fresh: string): Promise<string>;
}

export const programSettings = (turns: Turns): ProgramSettings => ({
  get: (name) =>
    turns.read('directory', async ({ db }) => {
      const row = await db.selectFrom('kept').where('name', '=', name).select('value').executeTakeFirst();
      return row?.value;
    }),

  getOrSet: (name, fresh) =>
    writeAll(turns, 'directory', async ({ db }) => {
      await db
        .insertInto('kept')
        .values({ name, value: fresh })
        .onConflict((conflict) => conflict.doNothing())
        .execute();
      const row = await db
        .selectFrom('kept')
        .where('name', '=', name)
        .select('value')
        .executeTakeFirstOrThrow();
      return row.value;
    }),

  set: (name, value) => writeAll(turns, 'directory', ({ db }) => writeSetting(db, name, value)),
});

export const writeSetting = async (db: Transaction<Tables>, name: string, value: string): Promise<void> => {
  await db
    .insertInto('kept')
    .values({ name, value })
    .onConflict((conflict) => conflict.column('name').doUpdateSet({ value }))
    .execute();
};
