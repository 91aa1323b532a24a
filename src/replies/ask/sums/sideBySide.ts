import { bucketFigures, bucketRow, judgedBuckets, nameOf, whatItNeeds } from './bucketRow.ts';
import type { Sum } from './sumAsked.ts';

const choosing =
  /\bor\b|\bvs\b|\bversus\b|\bcompare\b|\bbetter\b|\bbetween\b|\bdifference\b|\bside by side\b|\bwhich\b|\bthan\b|\bboth\b/;

/** Nothing but a choice is asked: a question with any other word is about something else. */
const small = new Set(
  `or and vs versus compare better best between difference side by which one ones of the a an is are it should shall do i we
  use using dip in into ready now today tonight bucket buckets choose pick take with for me to than both thicker thinner
  gravity what whats whos how state good go fresher fit ok okay please or would can could what about first stirring`.split(
    /\s+/,
  ),
);

const mostCompared = 4;

/** Two or more buckets next to each other. */
export const sideBySide: Sum = async ({ heard, named }, asking) => {
  if (named.length < 2 || named.length > mostCompared || !choosing.test(heard)) return undefined;
  const words = heard
    .replace(/[^a-z0-9 ]+/g, ' ')
    .split(' ')
    .filter((word) => word !== '');
  if (!words.every((word) => small.has(word))) return undefined;
  const numbers = new Set(named.map(({ no }) => no));
  const all = (await judgedBuckets(asking)).filter(({ state }) => numbers.has(state.no));
  if (all.length < 2) return undefined;
  const ready = all.filter(({ verdict }) => verdict.step === 'use');
  const others = all.filter(({ verdict }) => verdict.step !== 'use');
  return {
    kind: 'answer',
    title: asking.words.sum.sideBySide(ready.map(nameOf), others.map(nameOf)),
    facts: await Promise.all(all.map((one) => bucketRow(one, asking))),
    actions: all.slice(0, 3).map((one) => whatItNeeds(one, asking)),
    data: { sum: 'side-by-side', buckets: all.map(bucketFigures) },
  };
};
