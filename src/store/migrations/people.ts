import { sql } from 'kysely';
import type { Migration } from './migration.ts';

const withoutRowid = sql`without rowid`;

/** Members linked across platforms, the codes that link them, and pending erasures. */
export const people: Migration = async (db) => {
  // Entries keep the member id that they were written with; this table says who that is now.
  await db.schema
    .createTable('member_joins')
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('into_id', 'text', (column) => column.notNull())
    // Former name, kept so that erasure can find it.
    .addColumn('name', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('member_joins_key', ['studio_id', 'member_id'])
    .modifyEnd(withoutRowid)
    .execute();

  await db.schema
    .createTable('link_codes')
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull())
    .addColumn('until', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('link_codes_key', ['studio_id', 'member_id'])
    .modifyEnd(withoutRowid)
    .execute();

  await db.schema
    .createTable('erasures')
    .addColumn('id', 'integer', (column) => column.primaryKey())
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('step', 'text', (column) => column.notNull())
    .addColumn('members', 'text', (column) => column.notNull())
    .addColumn('words', 'text', (column) => column.notNull())
    .execute();

  await db.schema.alterTable('notes').addColumn('removed_by', 'text').execute();
};
