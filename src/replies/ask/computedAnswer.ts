import { millimetres } from '../../glaze/units.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { coatDoubt } from '../../studio/resist/coatDoubt.ts';
import { coatReady, isReadyAt } from '../../studio/resist/coatReady.ts';
import { dipTime } from '../../studio/piece/dipTime.ts';
import { isForDipping } from '../../studio/verdict/judgedBy.ts';
import type { NoteSum } from '../../studio/handbook.ts';
import type { Text } from '../../words/text/text.ts';
import { coatData } from '../resist/coatData.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import { dipTimeReply } from '../piece/dipTimeReply.ts';
import { lastDone } from '../bucket/lastDone.ts';
import { verdictReply } from '../verdict/verdictReply.ts';

/** A usual glaze thickness (common practice), for questions that name none. */
const usualCoat = millimetres(1);

const thicknessIn = (question: string) => {
  const said = /(\d+(?:[.,]\d+)?)\s*mm\b/i.exec(question)?.[1];
  const mm = said === undefined ? Number.NaN : Number(said.replace(',', '.'));
  return mm >= 0.05 && mm <= 10 ? millimetres(mm) : usualCoat;
};

/** The asker's own coats and when they are dry; undefined if there are none. */
const ownCoats = async ({ book, words, member, now }: Asking): Promise<Reply | undefined> => {
  const w = words.coat;
  const studio = await book.studio();
  const coats = (await book.coats())
    .filter(({ by, disowned }) => by === member && !disowned)
    .toSorted((a, b) => a.onAt - b.onAt)
    .map((coat) => {
      const ready = coatReady(coat, studio);
      const at = ready === 'never' ? undefined : ready.readyAt;
      const isReady = isReadyAt(ready, now);
      return {
        coat,
        isReady,
        text: w.rowText(coat.resist, at, isReady, {
          peel: coat.resist === 'latex',
          doubt: coatDoubt(coat),
        }),
      };
    });
  const [first] = coats;
  if (!first) return undefined;
  const rows = coats.map(({ coat, text }) => ({ label: w.row(coat.id, coat.pieces, undefined), text }));
  const headline: Text =
    coats.length === 1
      ? words.verdict.headline(first.coat.pieces, first.text)
      : w.listed(coats.length, coats.filter(({ isReady }) => isReady).length);
  return {
    kind: 'answer',
    title: headline,
    facts: coats.length === 1 ? [] : rows.slice(0, 3),
    dont: coats.every(({ isReady }) => isReady) ? [] : [w.dontEarly],
    data: { coats: coats.map(({ coat }) => coatData(coat, studio, now)) },
  };
};

/**
 * An answer computed from the logbook, for questions that a note can answer only in general; undefined if there is
 * none.
 */
export const computedAnswer = async (
  sum: NoteSum,
  question: string,
  bucket: BucketState | undefined,
  asking: Asking,
): Promise<Reply | undefined> => {
  if (sum === 'coats') return ownCoats(asking);
  if (!bucket) return undefined;
  if (sum === 'history') return lastDone(question, bucket, asking);
  if (sum === 'verdict' || bucket.hold) return verdictReply(bucket, asking);
  const wanted = { thickness: thicknessIn(question) };
  if (!isForDipping(bucket.settings) || dipTime(bucket, wanted, asking.now).kind !== 'dip') return undefined;
  return dipTimeReply(bucket, wanted, asking);
};
