import { createIndex, createTable } from './createTable.ts';
import type { Migration } from './migration.ts';

/** Studios, their people, and the logbook. */
export const logbook: Migration = async (db) => {
  await createTable(db, 'studios', { id: 'text key', name: 'text', created_at: 'bigint' }, { rowid: true });
  await createTable(
    db,
    'members',
    { studio_id: 'studio', id: 'text', name: 'text', created_at: 'bigint' },
    { key: ['studio_id', 'id'] },
  );
  await createTable(
    db,
    'studio_identities',
    { platform: 'text', external_id: 'text', studio_id: 'studio' },
    { key: ['platform', 'external_id'] },
  );
  await createTable(
    db,
    'member_identities',
    { studio_id: 'text', platform: 'text', external_id: 'text', member_id: 'text' },
    {
      key: ['studio_id', 'platform', 'external_id'],
      refers: {
        name: 'member_identities_member',
        columns: ['studio_id', 'member_id'],
        to: 'members',
        key: ['studio_id', 'id'],
      },
    },
  );

  await createTable(
    db,
    'streams',
    { studio_id: 'studio', stream_no: 'integer', seq: 'integer', folded_by: 'text null', state: 'text null' },
    { key: ['studio_id', 'stream_no'] },
  );
  const entry = ['studio_id', 'stream_no', 'seq'] as [string, ...string[]];
  await createTable(
    db,
    'events',
    {
      studio_id: 'text',
      stream_no: 'integer',
      seq: 'integer',
      at: 'bigint',
      logged_at: 'bigint',
      member_id: 'text',
      event: 'text',
      undoes: 'integer null',
    },
    { key: entry },
  );
  await createIndex(db, 'events_undoes', 'events', ['studio_id', 'stream_no', 'undoes'])
    .where('undoes', 'is not', null)
    .execute();
  await createTable(
    db,
    'notes',
    { studio_id: 'text', stream_no: 'integer', seq: 'integer', note: 'text' },
    { key: entry, refers: { name: 'notes_event', columns: entry, to: 'events', key: entry } },
  );

  await createTable(
    db,
    'replies',
    { studio_id: 'text', key: 'text', value: 'text', at: 'bigint' },
    { key: ['studio_id', 'key'], rowid: true },
  );
  await createIndex(db, 'replies_at', 'replies', ['at']).execute();
  await createTable(db, 'held_lines', { id: 'text key', studio_id: 'studio', line: 'text', until: 'bigint' });
  await createIndex(db, 'held_lines_until', 'held_lines', ['until']).execute();

  await createTable(db, 'kept', { name: 'text key', value: 'text' });
};
