import type { Migration } from './migration.ts';

/** What several processes on one database have to know of each other. */
export const manyProcesses: Migration = async (db) => {
  await db.schema
    .alterTable('studios')
    .addColumn('version', 'integer', (column) => column.notNull().defaultTo(0))
    .execute();
};
