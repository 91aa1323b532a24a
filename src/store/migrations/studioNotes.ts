import type { Migration } from './migration.ts';

/** A studio's own notes. They are not in the logbook, so that their words can be changed and erased. */
export const studioNotes: Migration = async (db) => {
  await db.schema
    .createTable('studio_notes')
    .addColumn('studio_id', 'text', (column) => column.notNull().references('studios.id'))
    .addColumn('no', 'integer', (column) => column.notNull())
    .addColumn('member_id', 'text', (column) => column.notNull())
    .addColumn('at', 'bigint', (column) => column.notNull())
    .addColumn('title', 'text')
    .addColumn('text', 'text')
    .addColumn('words', 'text')
    .addPrimaryKeyConstraint('studio_notes_key', ['studio_id', 'no'])
    .execute();
};
