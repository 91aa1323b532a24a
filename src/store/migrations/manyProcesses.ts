import { createIndex, createTable } from './createTable.ts';
import type { Migration } from './migration.ts';

/** What several processes on one database have to know of each other, and what a restart must not forget. */
export const manyProcesses: Migration = async (db) => {
  await db.schema
    .alterTable('studios')
    .addColumn('version', 'integer', (column) => column.notNull().defaultTo(0))
    .execute();

  await createTable(
    db,
    'wrong_codes',
    { id: 'integer key', studio_id: 'studio', member_id: 'text', at: 'bigint' },
    { rowid: true },
  );
  await createIndex(db, 'wrong_codes_member', 'wrong_codes', ['studio_id', 'member_id']).execute();

  await createTable(
    db,
    'daily_entries',
    { studio_id: 'text', member_id: 'text', day: 'integer', entries: 'integer' },
    { key: ['studio_id', 'member_id', 'day'], rowid: true },
  );
};
