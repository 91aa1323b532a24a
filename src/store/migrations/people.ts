import { createTable } from './createTable.ts';
import type { Migration } from './migration.ts';

/** Members linked across platforms, the codes that link them, and pending erasures. */
export const people: Migration = async (db) => {
  // Entries keep the member id that they were written with; this table says who that is now.
  await createTable(
    db,
    'member_joins',
    { studio_id: 'studio', member_id: 'text', into_id: 'text', name: 'text' },
    { key: ['studio_id', 'member_id'] },
  );
  await createTable(
    db,
    'link_codes',
    { studio_id: 'studio', member_id: 'text', hash: 'text', until: 'bigint' },
    { key: ['studio_id', 'member_id'] },
  );
  await createTable(
    db,
    'erasures',
    { id: 'integer key', studio_id: 'studio', step: 'text', members: 'text', words: 'text' },
    { rowid: true },
  );
  await db.schema.alterTable('notes').addColumn('removed_by', 'text').execute();
};
