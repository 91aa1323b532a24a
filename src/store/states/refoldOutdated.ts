import { sql } from 'kysely';
import { atLeisure } from '../engine/atLeisure.ts';
import type { Turns } from '../engine/turns.ts';
import { foldedBy } from './foldedBy.ts';
import { rebuildState } from './rebuildStates.ts';
import type { StreamName } from './refold.ts';

const mostAtOnce = 500;

/** The next streams in the order of their names. All of them, so that no turn has to look through many for a few. */
const nextStreams = (turns: Turns, after: StreamName | undefined) =>
  turns.read('directory', ({ db }) =>
    db
      .selectFrom('streams')
      .select(['studio_id as studio', 'stream_no as stream', 'folded_by'])
      .$if(after !== undefined, (query) =>
        query.where(sql<boolean>`(studio_id, stream_no) > (${after?.studio}, ${after?.stream})`),
      )
      .orderBy('studio_id')
      .orderBy('stream_no')
      .limit(mostAtOnce)
      .execute(),
  );

/** Folds one state anew and stores it, unless somebody has done so meanwhile. */
const refoldOne = (turns: Turns, name: StreamName): Promise<boolean> =>
  turns.write({ rows: name.studio }, async (writing) => {
    const row = await writing.db
      .selectFrom('streams')
      .where(({ and }) => and({ studio_id: name.studio, stream_no: name.stream }))
      .where('folded_by', '<>', foldedBy)
      .select('seq')
      .executeTakeFirst();
    if (row) await rebuildState(writing, name);
    return { keep: row !== undefined, value: row !== undefined };
  });

/**
 * After an update, states are stored that other code has folded. Whoever came to a studio first would wait until its
 * buckets are folded anew, and again later, because what is only read is not stored. So this does it at leisure, bucket
 * by bucket, until it is told to stop; returns the number of buckets.
 */
export const refoldOutdated = async (turns: Turns, signal: AbortSignal): Promise<number> => {
  let count = 0;
  let last: StreamName | undefined;
  do {
    if (signal.aborted) return count;
    const page = await atLeisure(signal, () => nextStreams(turns, last));
    for (const name of page) {
      if (signal.aborted) return count;
      const isOutdated = name.folded_by !== null && name.folded_by !== foldedBy;
      if (isOutdated && (await atLeisure(signal, () => refoldOne(turns, name)))) count += 1;
    }
    last = page.length < mostAtOnce ? undefined : page.at(-1);
  } while (last !== undefined);
  return count;
};
