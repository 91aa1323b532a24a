import { sql } from 'kysely';
import { createIndex, createTable } from './createTable.ts';
import type { Migration } from './migration.ts';

/** Reminders by member and time. A delivered one stays for a while, so that it is not delivered twice. */
export const reminders: Migration = async (db) => {
  await createTable(
    db,
    'reminders',
    {
      id: 'integer key',
      studio_id: 'studio',
      member_id: 'text',
      key: 'text',
      subject: 'text',
      about: 'text',
      status: 'text',
      due_at: 'bigint',
      next_at: 'bigint',
      good_until: 'bigint',
      put_off_to: 'bigint null',
      nonce: 'text',
      claimed: 'integer',
      unsure_since: 'bigint null',
      tries: 'integer',
    },
    { rowid: true },
  );
  await createIndex(db, 'reminders_key', 'reminders', ['studio_id', 'member_id', 'key']).unique().execute();
  await createIndex(db, 'reminders_subject', 'reminders', ['studio_id', 'subject']).execute();
  await createIndex(db, 'reminders_next', 'reminders', ['next_at'])
    .where(sql<boolean>`status = 'pending'`)
    .execute();
  await createIndex(db, 'reminders_settled', 'reminders', ['good_until'])
    .where(sql<boolean>`status <> 'pending'`)
    .execute();
};
