import { addedSquare, repeatability } from '../../glaze/statistics/repeatability.ts';
import type { Belief } from './mixture.ts';
import { repeatsWorth } from './priors.ts';

/** Readings of one kind that were repeated in one visit: so many, and the sum of their squared differences. */
export interface Repeats {
  count: number;
  squares: number;
}

/** The readings of one kind in a visit, with nothing poured in between. */
export interface Read {
  mean: number;
  count: number;
}

/** A difference of so many deviations is a slip of the hand, and tells nothing of how well readings repeat. */
const slipFrom = 3.5;

/** How one kind of reading scatters, in one standard deviation; as `usual` until some were repeated. */
export const scatterOf = ({ repeats }: Pick<Belief, 'repeats'>, kind: string, usual: number): number => {
  const known = repeats?.[kind];
  if (!known) return usual;
  const found = repeatability({ sd: usual, worth: repeatsWorth, squares: known.squares, count: known.count });
  return found.ok ? found.value : usual;
};

/** Counts a reading as one more of its kind in this visit: the second and later ones tell how well they repeat. */
export const withRepeat = (belief: Belief, kind: string, value: number, usual: number): Belief => {
  const { visit } = belief;
  if (!visit) return belief;
  const before = visit.reads?.[kind];
  const square = before ? addedSquare(before, value) : 0;
  if (square > (slipFrom * scatterOf(belief, kind, usual)) ** 2) return belief;
  const count = (before?.count ?? 0) + 1;
  const mean = (before?.mean ?? 0) + (value - (before?.mean ?? 0)) / count;
  const read = { ...belief, visit: { ...visit, reads: { ...visit.reads, [kind]: { mean, count } } } };
  if (!before) return read;
  const { count: so = 0, squares = 0 } = belief.repeats?.[kind] ?? {};
  return {
    ...read,
    repeats: { ...belief.repeats, [kind]: { count: so + 1, squares: squares + square } },
  };
};
