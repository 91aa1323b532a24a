import type { Transaction } from 'kysely';
import type { StudioId } from '../../studio/ids.ts';
import type { Tables } from '../migrations/tables.ts';

/** Lets other processes that serve the room see that posts were changed, or that sessions ended or changed hands. */
export const noteChange = async (
  db: Transaction<Tables>,
  studio: StudioId,
  what: 'posts_changed' | 'sessions_changed',
): Promise<void> => {
  await db
    .updateTable('studios')
    .set(({ eb }) => ({ [what]: eb(what, '+', 1) }))
    .where('id', '=', studio)
    .execute();
};
