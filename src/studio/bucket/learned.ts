import { isNews, lentBy, ownShown } from '../belief/fromOthers.ts';
import { counted, nothingCounted, type Shown } from '../belief/mixture.ts';
import type { Learned, BucketEventOf } from './bucketEvent.ts';
import type { BucketState } from './bucketState.ts';
import { cupReads, instrumentOf, vesselReads } from './readsOf.ts';

const names = ['water', 'powder', 'waterOut', 'salt', 'blind', 'looks'] as const;

/** What an entry says of other buckets, as a belief counts it. */
export const shownIn = ({ days, counts, vessels, cups }: Learned): Shown => {
  const all = nothingCounted.slice();
  for (const name of names) all[counted[name]] = counts[name];
  // An import may bring anything.
  all[counted.blind] = Math.min(counts.blind, counts.looks);
  return {
    days,
    counts: all,
    repeats: Object.fromEntries([
      ...vessels.map(({ vessel, count, squares }) => [vesselReads(vessel), { count, squares }]),
      ...cups.map(({ cup, count, squares }) => [cupReads(cup), { count, squares }]),
    ]),
  };
};

/** More digits than these say nothing. */
const written = (value: number): number => Number(value.toPrecision(4));

const learnedOf = ({ days, counts, repeats }: Shown): BucketEventOf<'learned'> => {
  const seen = (name: keyof typeof counted) => written(counts[counted[name]] ?? 0);
  const found = Object.entries(repeats).map(([kind, { count, squares }]) => ({
    ...instrumentOf(kind),
    count: written(count),
    squares: written(squares),
  }));
  return {
    kind: 'learned',
    days: written(days),
    counts: {
      water: seen('water'),
      powder: seen('powder'),
      waterOut: seen('waterOut'),
      salt: seen('salt'),
      blind: seen('blind'),
      looks: seen('looks'),
    },
    vessels: found.flatMap((one) => ('cup' in one ? [] : [one])),
    cups: found.flatMap((one) => ('cup' in one ? [one] : [])),
  };
};

/**
 * What each bucket of a studio has to learn of the others: of their people, their vessels and their cups. Nothing for one that
 * knows nearly as much already, and for one that is retired; but a retired one still tells.
 */
export const toLearn = (
  buckets: readonly BucketState[],
): { of: BucketState; event: BucketEventOf<'learned'> }[] => {
  const shown = buckets.map(({ belief }) => ownShown(belief));
  return buckets.flatMap((of, i) => {
    if (of.retired) return [];
    const lent = lentBy(shown.filter((_, j) => j !== i));
    return isNews(of.belief.others, lent) ? [{ of, event: learnedOf(lent) }] : [];
  });
};
