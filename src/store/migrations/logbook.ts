import { sql } from 'kysely';
import type { Migration } from './migration.ts';

const withoutRowid = sql`without rowid`;

/** Studios, their people, and the logbook. */
export const logbook: Migration = async (db) => {
  await db.schema
    .createTable('studios')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('created_at', 'bigint', (column) => column.notNull())
    .execute();

  await db.schema
    .createTable('members')
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('created_at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('members_key', ['studio_id', 'id'])
    .modifyEnd(withoutRowid)
    .execute();

  await db.schema
    .createTable('studio_identities')
    .addColumn('platform', 'text', (column) => column.notNull())
    .addColumn('external_id', 'text', (column) => column.notNull())
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addPrimaryKeyConstraint('studio_identities_key', ['platform', 'external_id'])
    .modifyEnd(withoutRowid)
    .execute();

  await db.schema
    .createTable('member_identities')
    .addColumn('studio_id', 'text', (column) => column.notNull())
    .addColumn('platform', 'text', (column) => column.notNull())
    .addColumn('external_id', 'text', (column) => column.notNull())
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('member_identities_key', ['studio_id', 'platform', 'external_id'])
    .addForeignKeyConstraint('member_identities_member', ['studio_id', 'member_id'], 'members', [
      'studio_id',
      'id',
    ])
    .modifyEnd(withoutRowid)
    .execute();

  await db.schema
    .createTable('streams')
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('stream_no', 'integer', (column) => column.notNull())
    .addColumn('seq', 'integer', (column) => column.notNull())
    .addColumn('folded_by', 'text')
    .addColumn('state', 'text')
    .addPrimaryKeyConstraint('streams_key', ['studio_id', 'stream_no'])
    .modifyEnd(withoutRowid)
    .execute();

  await db.schema
    .createTable('events')
    .addColumn('studio_id', 'text', (column) => column.notNull())
    .addColumn('stream_no', 'integer', (column) => column.notNull())
    .addColumn('seq', 'integer', (column) => column.notNull())
    .addColumn('at', 'bigint', (column) => column.notNull())
    .addColumn('logged_at', 'bigint', (column) => column.notNull())
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('event', 'text', (column) => column.notNull())
    .addColumn('undoes', 'integer')
    .addPrimaryKeyConstraint('events_key', ['studio_id', 'stream_no', 'seq'])
    .modifyEnd(withoutRowid)
    .execute();
  await db.schema
    .createIndex('events_undoes')
    .on('events')
    .columns(['studio_id', 'stream_no', 'undoes'])
    .where('undoes', 'is not', null)
    .execute();

  await db.schema
    .createTable('notes')
    .addColumn('studio_id', 'text', (column) => column.notNull())
    .addColumn('stream_no', 'integer', (column) => column.notNull())
    .addColumn('seq', 'integer', (column) => column.notNull())
    .addColumn('note', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('notes_key', ['studio_id', 'stream_no', 'seq'])
    .addForeignKeyConstraint('notes_event', ['studio_id', 'stream_no', 'seq'], 'events', [
      'studio_id',
      'stream_no',
      'seq',
    ])
    .modifyEnd(withoutRowid)
    .execute();

  // With a rowid: without one, a row of over a kilobyte would take a whole extra page.
  await db.schema
    .createTable('replies')
    .addColumn('studio_id', 'text', (column) => column.notNull())
    .addColumn('key', 'text', (column) => column.notNull())
    .addColumn('value', 'text', (column) => column.notNull())
    .addColumn('at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('replies_key', ['studio_id', 'key'])
    .execute();
  await db.schema.createIndex('replies_at').on('replies').column('at').execute();

  await db.schema
    .createTable('held_lines')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('line', 'text', (column) => column.notNull())
    .addColumn('until', 'bigint', (column) => column.notNull())
    .modifyEnd(withoutRowid)
    .execute();
  await db.schema.createIndex('held_lines_until').on('held_lines').column('until').execute();

  await db.schema
    .createTable('kept')
    .addColumn('name', 'text', (column) => column.primaryKey())
    .addColumn('value', 'text', (column) => column.notNull())
    .modifyEnd(withoutRowid)
    .execute();
};
