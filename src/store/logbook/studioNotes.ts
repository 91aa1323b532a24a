import type { Kysely, Transaction } from 'kysely';
import type { StudioNote } from '../../studio/handbook.ts';
import type { StudioId } from '../../studio/ids.ts';
import type { Tables } from '../migrations/tables.ts';

/** A studio's own notes, without removed ones. */
export const readNotes = async (db: Kysely<Tables>, studio: StudioId): Promise<StudioNote[]> => {
  const rows = await db
    .selectFrom('studio_notes')
    .where('studio_id', '=', studio)
    .selectAll()
    .orderBy('no')
    .execute();
  return rows.flatMap(({ no, title, text, words, member_id: by, at }) =>
    title === null || text === null ? [] : [{ no, title, text, words: words ?? '', by, at }],
  );
};

/** Replaces the note with the same number, or adds one under the next number. */
export const saveNote = async (
  db: Transaction<Tables>,
  studio: StudioId,
  note: Omit<StudioNote, 'no'> & { no?: number },
): Promise<StudioNote> => {
  const { last } = await db
    .selectFrom('studio_notes')
    .where('studio_id', '=', studio)
    .select(({ fn }) => fn.max('no').as('last'))
    .executeTakeFirstOrThrow();
  const no = note.no ?? (last ?? 0) + 1;
  const { title, text, words, by, at } = note;
  const row = { title, text, words, member_id: by, at };
  await db
    .insertInto('studio_notes')
    .values({ studio_id: studio, no, ...row })
    .onConflict((conflict) => conflict.columns(['studio_id', 'no']).doUpdateSet(row))
    .execute();
  return { ...note, no };
};

export const forgetNote = async (db: Transaction<Tables>, studio: StudioId, no: number): Promise<boolean> => {
  const { numUpdatedRows } = await db
    .updateTable('studio_notes')
    .set({ title: null, text: null, words: null })
    .where(({ and }) => and({ studio_id: studio, no }))
    .where('text', 'is not', null)
    .executeTakeFirst();
  return numUpdatedRows > 0n;
};
