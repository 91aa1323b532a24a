import { sql } from 'kysely';
import type { Migration } from './migration.ts';

/** Reminders by member and time. A delivered one stays for a while, so that it is not delivered twice. */
export const reminders: Migration = async (db) => {
  await db.schema
    .createTable('reminders')
    .addColumn('id', 'integer', (column) => column.primaryKey())
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('key', 'text', (column) => column.notNull())
    .addColumn('subject', 'text', (column) => column.notNull())
    .addColumn('about', 'text', (column) => column.notNull())
    .addColumn('status', 'text', (column) => column.notNull())
    .addColumn('due_at', 'bigint', (column) => column.notNull())
    .addColumn('next_at', 'bigint', (column) => column.notNull())
    .addColumn('good_until', 'bigint', (column) => column.notNull())
    .addColumn('put_off_to', 'bigint')
    .addColumn('nonce', 'text', (column) => column.notNull())
    .addColumn('claimed', 'integer', (column) => column.notNull())
    .addColumn('unsure_since', 'bigint')
    .addColumn('tries', 'integer', (column) => column.notNull())
    .execute();
  await db.schema
    .createIndex('reminders_key')
    .unique()
    .on('reminders')
    .columns(['studio_id', 'member_id', 'key'])
    .execute();
  await db.schema
    .createIndex('reminders_subject')
    .on('reminders')
    .columns(['studio_id', 'subject'])
    .execute();
  await db.schema
    .createIndex('reminders_next')
    .on('reminders')
    .column('next_at')
    .where(sql<boolean>`status = 'pending'`)
    .execute();
  await db.schema
    .createIndex('reminders_settled')
    .on('reminders')
    .column('good_until')
    .where(sql<boolean>`status <> 'pending'`)
    .execute();
};
