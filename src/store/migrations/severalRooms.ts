import { sql } from 'kysely';
import type { Migration } from './migration.ts';

const withoutRowid = sql`without rowid`;

/** What lets several processes serve one studio's room, and send reminders while their clocks differ. */
export const severalRooms: Migration = async (db) => {
  for (const count of ['posts_changed', 'sessions_changed'])
    await db.schema
      .alterTable('studios')
      .addColumn(count, 'integer', (column) => column.notNull().defaultTo(0))
      .execute();

  await db.schema.alterTable('reminders').addColumn('leased_until', 'bigint').execute();

  await db.schema
    .createTable('tries')
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('key', 'text', (column) => column.notNull())
    .addColumn('until', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('tries_key', ['studio_id', 'key'])
    .modifyEnd(withoutRowid)
    .execute();
  await db.schema.createIndex('tries_until').on('tries').column('until').execute();
};
