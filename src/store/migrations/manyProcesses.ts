import type { Migration } from './migration.ts';

/** What several processes on one database have to know of each other, and what a restart must not forget. */
export const manyProcesses: Migration = async (db) => {
  await db.schema
    .alterTable('studios')
    .addColumn('version', 'integer', (column) => column.notNull().defaultTo(0))
    .execute();

  await db.schema
    .createTable('wrong_codes')
    .addColumn('id', 'integer', (column) => column.primaryKey())
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('at', 'bigint', (column) => column.notNull())
    .execute();
  await db.schema
    .createIndex('wrong_codes_member')
    .on('wrong_codes')
    .columns(['studio_id', 'member_id'])
    .execute();

  await db.schema
    .createTable('daily_entries')
    .addColumn('studio_id', 'text', (column) => column.notNull())
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('day', 'integer', (column) => column.notNull())
    .addColumn('entries', 'integer', (column) => column.notNull())
    .addPrimaryKeyConstraint('daily_entries_key', ['studio_id', 'member_id', 'day'])
    .execute();
};
