import { createTable } from './createTable.ts';
import type { Migration } from './migration.ts';

/** Files that a post in the room shows once: sealed with a key that only the phone has, and for a short time. */
export const shownOnce: Migration = (db) =>
  createTable(
    db,
    'shown_once',
    { studio_id: 'studio', no: 'integer', member_id: 'text', sealed: 'text', until: 'bigint' },
    { key: ['studio_id', 'no'] },
  );
