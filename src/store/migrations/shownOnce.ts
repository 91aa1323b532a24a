import { sql } from 'kysely';
import type { Migration } from './migration.ts';

/** Files that a post in the room shows once: sealed with a key that only the phone has, and for a short time. */
export const shownOnce: Migration = async (db) => {
  await db.schema
    .createTable('shown_once')
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('no', 'integer', (column) => column.notNull())
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('sealed', 'text', (column) => column.notNull())
    .addColumn('until', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('shown_once_key', ['studio_id', 'no'])
    .modifyEnd(sql`without rowid`)
    .execute();
};
