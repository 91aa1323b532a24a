import { createIndex, createTable } from './createTable.ts';
import type { Migration } from './migration.ts';

/** What lets several processes serve one studio's room, and send reminders while their clocks differ. */
export const severalRooms: Migration = async (db) => {
  for (const count of ['posts_changed', 'sessions_changed'])
    await db.schema
      .alterTable('studios')
      .addColumn(count, 'integer', (column) => column.notNull().defaultTo(0))
      .execute();
  await db.schema.alterTable('reminders').addColumn('leased_until', 'bigint').execute();

  await createTable(
    db,
    'tries',
    { studio_id: 'studio', key: 'text', until: 'bigint' },
    { key: ['studio_id', 'key'] },
  );
  await createIndex(db, 'tries_until', 'tries', ['until']).execute();
};
