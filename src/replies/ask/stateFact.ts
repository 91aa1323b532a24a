import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { decide } from '../../studio/verdict/decide.ts';
import type { Asking } from '../../contract/contract.ts';
import { ageOf, uncounted } from '../verdict/verdictFacts.ts';

/** One line on a bucket's state: gravity against its window, last stir, next step. */
export const stateFact = async (state: BucketState, { words, now, role, book }: Asking) => {
  const w = words.verdict;
  const studio = await book.studio();
  const verdict = decide(state, { now, role, sure: studio.sure });
  const { gravity, window, hoursSinceStir } = verdict;
  return {
    label: [{ said: state.settings.name }],
    text: words.ask.state(
      gravity === null
        ? undefined
        : gravity.believed
          ? [...w.gravityFact(gravity.value, gravity.u95, window), ...ageOf(state.believed?.at, now, words)]
          : uncounted(gravity.value, state, words),
      hoursSinceStir === null ? w.neverStirred(state.voided?.by === 'frozen') : w.stirredAgo(hoursSinceStir),
      w.title(verdict, studio),
    ),
  };
};
