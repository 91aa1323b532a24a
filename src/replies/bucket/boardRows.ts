import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { isVoid } from '../verdict/verdictFacts.ts';
import { decide } from '../../studio/verdict/decide.ts';
import type { Instant, StreamNo } from '../../studio/ids.ts';
import type { Logbook } from '../../studio/logbook/ports.ts';
import type { Step, Verdict } from '../../studio/verdict/verdict.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';

/** A bucket's row on the wall board. */
export interface BoardRow {
  no: StreamNo;
  name: string;
  step: Step;
  stepName: string;
  needs: Text;
  gravity: Verdict['gravity'];
  window: Verdict['window'];
  stirredAt: Instant | undefined;
}

/** Every bucket in use, by number. It shows what any member may do, and leaves out amounts that only keepers see. */
export const boardRows = async (
  book: Logbook,
  { now, words }: { now: Instant; words: Words },
): Promise<BoardRow[]> => {
  const studio = await book.studio();
  const row = (state: BucketState): BoardRow => {
    const verdict = decide(state, { now, role: 'member', sure: studio.sure });
    return {
      no: state.no,
      name: state.settings.name,
      step: verdict.step,
      stepName: words.bucket.stepName(verdict.keeperStep ?? verdict.step),
      needs: words.verdict.title(verdict, studio),
      gravity: isVoid(state) ? null : verdict.gravity,
      window: verdict.window,
      stirredAt: state.stir?.at,
    };
  };
  return (await book.buckets()).filter(({ retired }) => !retired).map(row);
};
