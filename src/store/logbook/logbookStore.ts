import type { Clock } from '../../clock.ts';
import type { Instant, StudioId } from '../../studio/ids.ts';
import type {
  LogbookStore,
  WriteResult,
  Logbook,
  PeopleChange,
  WritableLogbook,
} from '../../studio/logbook/ports.ts';
import { compiledOnce } from '../engine/compiledOnce.ts';
import { PeopleChanges } from '../people/peopleChanges.ts';
import { readAtLeisure } from './readBesideOwner.ts';
import { during, ReadingLogbook } from './readingLogbook.ts';
import type { TransactionOutcome, Turns } from '../engine/turns.ts';
import { storedAs, withoutNul } from '../engine/withoutNul.ts';
import { WritingLogbook } from './writingLogbook.ts';

const storedReply = compiledOnce<{ studio: StudioId; key: string }, { value: string }>((db, value) =>
  db
    .selectFrom('replies')
    .where('studio_id', '=', value('studio'))
    .where('key', '=', value('key'))
    .select('value'),
);

const storeReply = compiledOnce<{ studio: StudioId; key: string; value: string; at: Instant }>(
  (db, value) =>
    db
      .insertInto('replies')
      .values({ studio_id: value('studio'), key: value('key'), value: value('value'), at: value('at') }),
  { isAwaited: false },
);

/**
 * A file has one owner, who has its states in memory: they are stored after every so many entries of a bucket, and the rest is
 * added when the file is opened. Where several processes write, each would have to add the rest at every turn: there all are stored.
 */
const storedEvery = 8;

export const logbookStore = (turns: Turns, clock: Clock, changes = new PeopleChanges()): LogbookStore => {
  const read = <T>(studio: StudioId, work: (book: Logbook) => Promise<T>): Promise<T> =>
    turns.read({ logbook: studio }, (reading) => during(new ReadingLogbook(reading, studio), work));
  return {
    studio: async (studio) =>
      (await turns.remembered(studio))?.studio ?? read(studio, (book) => book.studio()),

    read,

    readSnapshot: (studio, work) => turns.readAside(readAtLeisure(studio, work)),

    async writeOnce<T>(
      studio: StudioId,
      typedKey: string,
      work: (book: WritableLogbook) => Promise<WriteResult<T>>,
    ): Promise<T> {
      const key = withoutNul(typedKey);
      let told: readonly PeopleChange[] = [];
      const written = await turns.write(
        { logbook: studio },
        async (writing): Promise<TransactionOutcome<T>> => {
          const [stored] = await storedReply(writing.db, { studio, key });
          // The key belongs to one request, so the value has that request's type.
          if (stored) return { keep: false, value: JSON.parse(stored.value) as T };
          return during(new WritingLogbook(writing, studio), async (book) => {
            const outcome = await work(book);
            if (!outcome.keep) return { ...outcome, evenSo: book.evenSo };
            await book.save({ every: turns.isShared ? 1 : storedEvery });
            const { value, json } = storedAs(outcome.value);
            const repeated = outcome.repeated === undefined ? json : storedAs(outcome.repeated).json;
            await storeReply(writing.db, { studio, key, value: repeated, at: clock.now() });
            told = book.changes;
            return { keep: true, value };
          });
        },
      );
      for (const change of told) changes.tell(change);
      return written;
    },
  };
};
