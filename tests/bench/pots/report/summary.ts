import { figureNames, figures, type Figure, type Score } from '../people/score.ts';

/** The mean over seeds, and two standard errors of it. */
export interface Estimate {
  mean: number;
  within: number;
}

/** One decider in one room, over all seeds. */
export interface Summary {
  room: string;
  decider: string;
  figures: Partial<Record<Figure, Estimate>>;
  said: Score['said'];
}

/** Undefined where nothing was counted; of one seed nobody knows how far it is off. */
const estimate = (values: readonly number[]): Estimate | undefined => {
  if (values.length === 0) return undefined;
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  const squares = values.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  return { mean, within: 2 * Math.sqrt(squares / (values.length - 1) / values.length) };
};

export const summary = (room: string, decider: string, scores: readonly Score[]): Summary => {
  const all: Summary = { room, decider, figures: {}, said: scores.flatMap(({ said }) => said) };
  for (const name of figureNames) {
    const values = scores.map(figures[name]).filter((value) => value !== undefined);
    const found = estimate(values);
    if (found) all.figures[name] = found;
  }
  return all;
};
