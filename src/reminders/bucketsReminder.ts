import type { Reply } from '../contract/contract.ts';
import { decide } from '../studio/verdict/decide.ts';
import type { Instant } from '../studio/ids.ts';
import type { Logbook } from '../studio/logbook/ports.ts';
import type { Words } from '../words/words.ts';

const steps = ['stir', 'sieve', 'measure'] as const;

/** What the buckets need before a session; undefined if nothing. */
export const bucketsReminder = async (
  { session, from }: { session: string; from: Instant },
  { book, words, now }: { book: Logbook; words: Words; now: Instant },
): Promise<Reply | undefined> => {
  const { reminder: w } = words;
  const { sure } = await book.studio();
  const buckets = (await book.buckets())
    .filter(({ retired, hold }) => !retired && !hold)
    .map((state) => ({ name: state.settings.name, step: decide(state, { now, role: 'keeper', sure }).step }));
  const wanting = steps
    .map((step) => ({ step, names: buckets.filter((one) => one.step === step).map(({ name }) => name) }))
    .filter(({ names }) => names.length > 0);
  const count = wanting.reduce((sum, { names }) => sum + names.length, 0);
  if (count === 0) return undefined;
  return {
    kind: 'answer',
    title: w.buckets(session, from, count),
    facts: wanting.map(({ step, names }) => ({ label: [w.bucketStep[step]], text: w.bucketNames(names) })),
    data: { session, buckets: wanting.map(({ step, names }) => ({ step, names })) },
  };
};
