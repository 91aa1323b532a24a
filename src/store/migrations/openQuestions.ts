import { createIndex, createTable } from './createTable.ts';
import type { Migration } from './migration.ts';

/** Questions that /ask could not answer. They are not in the logbook, so that they can be forgotten. */
export const openQuestions: Migration = async (db) => {
  await createTable(
    db,
    'open_questions',
    {
      studio_id: 'studio',
      no: 'integer',
      key: 'text',
      text: 'text',
      bucket: 'integer null',
      at: 'bigint',
      times: 'integer',
      member_id: 'text null',
    },
    { key: ['studio_id', 'no'], keyName: 'open_questions_no', rowid: true },
  );
  await createIndex(db, 'open_questions_key', 'open_questions', ['studio_id', 'key']).unique().execute();
};
