import { nameAsWord } from '../../studio/people/withoutWords.ts';
import type { Erasure } from './erasureRow.ts';
import type { Turns } from '../engine/turns.ts';

/** A shorter text within a question, such as the name of a pot, could be anybody's. */
const tellingLength = 12;

/** Deletes the open questions that contain any of the words. Who asked the others is not stored. */
export const eraseOpenQuestions = (turns: Turns, { studio, names, texts }: Erasure): Promise<void> =>
  turns.write({ rows: studio }, async ({ db }) => {
    const name = nameAsWord(names);
    const asked = await db
      .selectFrom('open_questions')
      .where('studio_id', '=', studio)
      .select(['no', 'text'])
      .execute();
    const named = asked.filter(
      ({ text }) =>
        (name && text.search(name) >= 0) ||
        texts.some((one) => text === one || (one.length >= tellingLength && text.includes(one))),
    );
    for (const { no } of named)
      await db.deleteFrom('open_questions').where('studio_id', '=', studio).where('no', '=', no).execute();
    return { keep: named.length > 0, value: undefined };
  });
