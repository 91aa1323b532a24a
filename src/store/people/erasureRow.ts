import type { Kysely, Transaction } from 'kysely';
import { z } from 'zod';
import type { StudioId } from '../../studio/ids.ts';
import type { ErasedWords } from '../../studio/people/withoutWords.ts';
import { aMember, text } from '../entries/scalarSchemas.ts';
import type { Tables } from '../migrations/tables.ts';

const wordsSchema = z.strictObject({ names: z.array(text), texts: z.array(text) });

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
      members: z.array(aMember).parse(JSON.parse(row.members)),
      ...wordsSchema.parse(JSON.parse(row.words)),
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
