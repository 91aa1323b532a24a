import type { Clock } from '../clock.ts';
import { toLearn } from '../studio/bucket/learned.ts';
import { days, hours, instant, later, theProgram, type Instant, type StudioId } from '../studio/ids.ts';
import type { LogbookStore } from '../studio/logbook/ports.ts';
import { atLeisure } from './engine/atLeisure.ts';
import type { Turns } from './engine/turns.ts';
import { utcDay } from './lines/utcDay.ts';

/** Other keys begin with the name of a platform. */
const keyed = 'learned ';

/** Studios in which something was written in an hour: only so much is looked through in one turn. */
const writtenIn = (turns: Turns, from: Instant): Promise<StudioId[]> =>
  turns.read('directory', async ({ db }) => {
    const rows = await db
      .selectFrom('replies')
      .where('at', '>=', from)
      .where('at', '<', later(from, hours(1)))
      .where('key', 'not like', `${keyed}%`)
      .select('studio_id')
      .distinct()
      .execute();
    return rows.map(({ studio_id }) => studio_id);
  });

/** Lets the buckets of one studio learn of each other, once on a day; returns how many entries that took now. */
const learnIn = async (books: LogbookStore, studio: StudioId, now: Instant): Promise<number> => {
  let entries = 0;
  await books.writeOnce(studio, `${keyed}${utcDay(now)}`, async (book) => {
    const learning = toLearn(await book.buckets());
    for (const { of, event } of learning)
      // It comes right after what the bucket's last entry said, so that a later one simply adds on.
      await book.log(of.no, event, { at: of.foldedTo, loggedAt: now, by: theProgram });
    entries = learning.length;
    return { keep: true, value: entries };
  });
  return entries;
};

/**
 * Lets the buckets of every studio in which something was written since the day before (of UTC) learn of each other. The
 * others are not looked at. Whichever process comes first on a day does a studio; returns the number of entries.
 */
export const learnAcross = async (
  { turns, books, clock }: { turns: Turns; books: LogbookStore; clock: Clock },
  signal: AbortSignal,
): Promise<number> => {
  const now = clock.now();
  const studios = new Set<StudioId>();
  let from = instant((utcDay(now) - 1) * days(1));
  for (; from <= now && !signal.aborted; from = later(from, hours(1))) {
    const hour = from;
    for (const studio of await atLeisure(signal, () => writtenIn(turns, hour))) studios.add(studio);
  }
  let entries = 0;
  const failed: unknown[] = [];
  for (const studio of studios) {
    if (signal.aborted) break;
    await atLeisure(signal, () => learnIn(books, studio, now)).then(
      (count) => (entries += count),
      (error: unknown) => failed.push(error),
    );
  }
  if (failed.length > 0) throw new AggregateError(failed, 'the buckets of some studios could not learn');
  return entries;
};
