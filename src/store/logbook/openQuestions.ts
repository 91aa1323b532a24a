import type { Kysely, Transaction } from 'kysely';
import { instant, type Instant, type StudioId } from '../../studio/ids.ts';
import { questionsAreKept, type OpenQuestion } from '../../studio/openQuestion.ts';
import { nameKey } from '../../text/normalizedName.ts';
import type { Tables } from '../migrations/tables.ts';

/** More than a keeper would ever answer, and few enough that nobody can fill the file with them. */
const mostKept = 200;

export const readOpenQuestions = async (
  db: Kysely<Tables>,
  studio: StudioId,
  now: Instant,
): Promise<OpenQuestion[]> => {
  const rows = await db
    .selectFrom('open_questions')
    .where('studio_id', '=', studio)
    .where('at', '>=', instant(now - questionsAreKept))
    .selectAll()
    .orderBy('at', 'desc')
    .orderBy('no', 'desc')
    .execute();
  return rows.map(({ no, text, bucket, at, times, member_id: by }) => ({
    no,
    text,
    at,
    times,
    ...(bucket !== null && { bucket }),
    ...(by !== null && { by }),
  }));
};

/** The same question again is counted, and the oldest makes room. */
export const saveOpenQuestion = async (
  db: Transaction<Tables>,
  studio: StudioId,
  { text, bucket, at, by }: Omit<OpenQuestion, 'no' | 'times'>,
): Promise<void> => {
  const { last } = await db
    .selectFrom('open_questions')
    .where('studio_id', '=', studio)
    .select(({ fn }) => fn.max('no').as('last'))
    .executeTakeFirstOrThrow();
  await db
    .insertInto('open_questions')
    .values({
      studio_id: studio,
      no: (last ?? 0) + 1,
      key: nameKey(text),
      text,
      bucket: bucket ?? null,
      at,
      times: 1,
      member_id: by ?? null,
    })
    .onConflict((conflict) =>
      conflict.columns(['studio_id', 'key']).doUpdateSet(({ eb, fn, val }) => ({
        at,
        // Who puts their name to a question that was just asked does not ask it again.
        times: by === undefined ? eb('open_questions.times', '+', 1) : eb.ref('open_questions.times'),
        member_id: fn.coalesce(val(by ?? null), 'open_questions.member_id'),
      })),
    )
    .execute();
  await db
    .deleteFrom('open_questions')
    .where('studio_id', '=', studio)
    .where('no', 'in', ({ selectFrom }) =>
      selectFrom('open_questions')
        .where('studio_id', '=', studio)
        .orderBy('at', 'desc')
        .orderBy('no', 'desc')
        .limit(Number.MAX_SAFE_INTEGER)
        .offset(mostKept)
        .select('no'),
    )
    .execute();
};

export const dropOpenQuestion = async (
  db: Transaction<Tables>,
  studio: StudioId,
  no: number,
): Promise<boolean> => {
  const { numDeletedRows } = await db
    .deleteFrom('open_questions')
    .where(({ and }) => and({ studio_id: studio, no }))
    .executeTakeFirst();
  return numDeletedRows > 0n;
};
