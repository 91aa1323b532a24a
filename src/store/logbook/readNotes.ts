import type { Kysely } from 'kysely';
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
