import { createIndex, createTable } from './createTable.ts';
import type { Migration } from './migration.ts';

/** Who may enter the room, and its latest posts. Secrets, tokens and codes are stored as hashes. */
export const room: Migration = async (db) => {
  await createTable(
    db,
    'room_claims',
    { studio_id: 'studio', name_key: 'text', name: 'text', member_id: 'text', secret: 'text null' },
    { key: ['studio_id', 'name_key'] },
  );

  await createTable(db, 'room_sessions', {
    hash: 'text key',
    studio_id: 'studio',
    member_id: 'text',
    name: 'text',
    until: 'bigint',
  });
  await createIndex(db, 'room_sessions_member', 'room_sessions', ['studio_id', 'member_id']).execute();

  await createTable(db, 'room_codes', {
    hash: 'text key',
    studio_id: 'studio',
    purpose: 'text',
    until: 'bigint',
  });

  await createTable(
    db,
    'room_posts',
    {
      studio_id: 'studio',
      no: 'integer',
      key: 'text',
      id: 'text',
      at: 'bigint',
      member_id: 'text',
      line: 'text',
      private: 'integer',
      reply: 'text',
    },
    { key: ['studio_id', 'no'], rowid: true },
  );
  await createIndex(db, 'room_posts_request', 'room_posts', ['studio_id', 'key']).unique().execute();
};
