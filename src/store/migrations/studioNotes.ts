import { createTable } from './createTable.ts';
import type { Migration } from './migration.ts';

/** A studio's own notes. They are not in the logbook, so that their words can be changed and erased. */
export const studioNotes: Migration = (db) =>
  createTable(
    db,
    'studio_notes',
    {
      studio_id: 'studio',
      no: 'integer',
      member_id: 'text',
      at: 'bigint',
      title: 'text null',
      text: 'text null',
      words: 'text null',
    },
    { key: ['studio_id', 'no'], rowid: true },
  );
