import type { Kysely, Transaction } from 'kysely';
import { z } from 'zod';
import { memberId, type StudioId } from '../../studio/ids.ts';
import type { ErasedWords } from '../../studio/people/withoutWords.ts';
import type { Tables } from '../migrations/tables.ts';

const schema = z.strictObject({ names: z.array(z.string()), texts: z.array(z.string()) });
const members = z.array(z.string().transform(memberId));

export interface Erasure extends ErasedWords {
  id: number;
  studio: StudioId;
  step: Tables['erasures']['step'];
}

/** Stores a pending erasure, so that a restart does not lose it. */
export const queueErasure = async (
  db: Transaction<Tables>,
  { studio, step, members, names, texts }: Omit<Erasure, 'id'>,
): Promise<void> => {
  const words = JSON.stringify({ names, texts });
  await db
    .insertInto('erasures')
    .values({ studio_id: studio, step, members: JSON.stringify(members), words })
    .execute();
};

/** Words go first: the bytes of the file may have to wait for whoever reads it. */
export const nextErasure = async (db: Kysely<Tables>): Promise<Erasure | undefined> => {
  const row = await db
    .selectFrom('erasures')
    .selectAll()
    .orderBy(({ eb }) => eb('step', '=', 'compact'))
    .orderBy('id')
    .limit(1)
    .executeTakeFirst();
  return (
    row && {
      id: row.id,
      studio: row.studio_id,
      step: row.step,
      members: members.parse(JSON.parse(row.members)),
      ...schema.parse(JSON.parse(row.words)),
    }
  );
};

export const noteErasure = async (
  db: Transaction<Tables>,
  { id, step, names, texts }: Pick<Erasure, 'id' | 'step' | 'names' | 'texts'>,
): Promise<void> => {
  const words = JSON.stringify({ names, texts });
  await db.updateTable('erasures').set({ step, words }).where('id', '=', id).execute();
};
