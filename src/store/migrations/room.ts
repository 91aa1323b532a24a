import { sql } from 'kysely';
import type { Migration } from './migration.ts';

const withoutRowid = sql`without rowid`;

/** Who may enter the room, and its latest posts. Secrets, tokens and codes are stored as hashes. */
export const room: Migration = async (db) => {
  await db.schema
    .createTable('room_claims')
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('name_key', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('secret', 'text')
    .addPrimaryKeyConstraint('room_claims_key', ['studio_id', 'name_key'])
    .modifyEnd(withoutRowid)
    .execute();

  await db.schema
    .createTable('room_sessions')
    .addColumn('hash', 'text', (column) => column.primaryKey())
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('until', 'bigint', (column) => column.notNull())
    .modifyEnd(withoutRowid)
    .execute();
  await db.schema
    .createIndex('room_sessions_member')
    .on('room_sessions')
    .columns(['studio_id', 'member_id'])
    .execute();

  await db.schema
    .createTable('room_codes')
    .addColumn('hash', 'text', (column) => column.primaryKey())
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('purpose', 'text', (column) => column.notNull())
    .addColumn('until', 'bigint', (column) => column.notNull())
    .modifyEnd(withoutRowid)
    .execute();

  // With a rowid, because rows can be over a kilobyte.
  await db.schema
    .createTable('room_posts')
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('no', 'integer', (column) => column.notNull())
    .addColumn('key', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('at', 'bigint', (column) => column.notNull())
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('line', 'text', (column) => column.notNull())
    .addColumn('private', 'integer', (column) => column.notNull())
    .addColumn('reply', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('room_posts_key', ['studio_id', 'no'])
    .execute();
  await db.schema
    .createIndex('room_posts_request')
    .unique()
    .on('room_posts')
    .columns(['studio_id', 'key'])
    .execute();
};
