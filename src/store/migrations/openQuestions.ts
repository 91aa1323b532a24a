import type { Migration } from './migration.ts';

/** Questions that /ask could not answer. They are not in the logbook, so that they can be forgotten. */
export const openQuestions: Migration = async (db) => {
  await db.schema
    .createTable('open_questions')
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('no', 'integer', (column) => column.notNull())
    .addColumn('key', 'text', (column) => column.notNull())
    .addColumn('text', 'text', (column) => column.notNull())
    .addColumn('bucket', 'integer')
    .addColumn('at', 'bigint', (column) => column.notNull())
    .addColumn('times', 'integer', (column) => column.notNull())
    .addColumn('member_id', 'text')
    .addPrimaryKeyConstraint('open_questions_no', ['studio_id', 'no'])
    .execute();
  await db.schema
    .createIndex('open_questions_key')
    .unique()
    .on('open_questions')
    .columns(['studio_id', 'key'])
    .execute();
};
