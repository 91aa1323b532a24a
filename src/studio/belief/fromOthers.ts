import { type Belief, type Shown, average, counted, nothingCounted } from './mixture.ts';
import {
  blindPress,
  fromOthers,
  priorDays,
  repeatsWorth,
  unlogged,
  usualSeconds,
  usualWeighing,
} from './priors.ts';
import type { Repeats } from './repeats.ts';

const nothingShown: Shown = { days: 0, counts: nothingCounted, repeats: {} };

/** `a + times · b`; what is taken away again leaves no less than nothing, whatever was rounded. */
const plus = (a: number, b: number, times: number): number => Math.max(0, a + times * b);

const repeatsPlus = (a: Shown['repeats'], b: Shown['repeats'], times: number): Shown['repeats'] => {
  const all = { ...a };
  for (const [kind, more] of Object.entries(b)) {
    const { count = 0, squares = 0 } = a[kind] ?? {};
    all[kind] = { count: plus(count, more.count, times), squares: plus(squares, more.squares, times) };
  }
  return all;
};

const shownPlus = (a: Shown, b: Shown, times: 1 | -1): Shown => ({
  days: plus(a.days, b.days, times),
  counts: a.counts.map((count, i) => plus(count, b.counts[i] ?? 0, times)),
  repeats: repeatsPlus(a.repeats, b.repeats, times),
});

/** What a bucket has shown by itself: all that its belief counts, but for what others lent it. */
export const ownShown = ({ days, components, repeats = {}, others = nothingShown }: Belief): Shown =>
  shownPlus({ days, counts: average(components).counts, repeats }, others, -1);

/** Buckets of one studio are alike, and not quite: the others count for no more than so many days and repeats. */
const atMost = ({ days, counts, repeats }: Shown): Shown => {
  const part = days > 0 ? Math.min(1, fromOthers.days / days) : 0;
  const few = ({ count, squares }: Repeats): Repeats => {
    const share = Math.min(1, fromOthers.repeats / count);
    return { count: share * count, squares: share * squares };
  };
  const repeated = Object.entries(repeats).filter(([, { count }]) => count > 0);
  return {
    days: part * days,
    counts: counts.map((count) => part * count),
    repeats: Object.fromEntries(repeated.map(([kind, found]) => [kind, few(found)])),
  };
};

/** What some buckets lend to another, by what each has shown by itself. */
export const lentBy = (some: readonly Shown[]): Shown =>
  atMost(some.reduce((so, one) => shownPlus(so, one, 1), nothingShown));

/** The belief with what other buckets lend it, instead of what they lent it before. */
export const withOthers = (belief: Belief, others: Shown): Belief => {
  const { days, components, repeats = {}, others: before = nothingShown } = belief;
  const lent = (one: Shown) => shownPlus(shownPlus(one, before, -1), others, 1);
  const known = lent({ days, counts: [], repeats });
  return {
    ...belief,
    days: known.days,
    components: components.map((one) => ({
      ...one,
      counts: lent({ ...nothingShown, counts: one.counts }).counts,
    })),
    ...(Object.keys(known.repeats).length > 0 && { repeats: known.repeats }),
    others,
  };
};

const usualOf = (kind: string): number => (kind.startsWith('weight') ? usualWeighing : usualSeconds);

/** What a bucket that has shown nothing expects by what it was lent: rates, the part of blind looks, scatter by kind. */
const expected = ({ days, counts, repeats }: Shown): Map<string, number> => {
  const known = new Map<string, number>();
  for (const kind of ['water', 'powder', 'waterOut', 'salt'] as const) {
    const count = priorDays * unlogged[kind].perDay + (counts[counted[kind]] ?? 0);
    known.set(kind, count / (priorDays + days));
  }
  const blind = blindPress.blind + (counts[counted.blind] ?? 0);
  known.set('blind', blind / (blindPress.looks + (counts[counted.looks] ?? 0)));
  for (const [kind, { count, squares }] of Object.entries(repeats)) {
    const sum = repeatsWorth * usualOf(kind) ** 2 + squares;
    known.set(kind, Math.sqrt(sum / (repeatsWorth + count)));
  }
  return known;
};

/** Whether what is lent now differs from what was lent before by enough to be written down. */
export const isNews = (before: Shown = nothingShown, now: Shown): boolean => {
  const was = expected(before);
  const differs = ([kind, value]: [string, number]) =>
    Math.abs(Math.log(value / (was.get(kind) ?? usualOf(kind)))) > fromOthers.news;
  return [...expected(now)].some(differs);
};
