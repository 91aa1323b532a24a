import { deeds, figureNames, figures, type Figure, type Score } from '../people/score.ts';
import { takes, type Deed } from '../physics/settings.ts';

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
  /** Minutes that each deed took, for a dip. */
  deeds: [deed: Deed, minutes: number][];
}

/** Undefined where nothing was counted; of one seed nobody knows how far it is off. */
const estimate = (values: readonly number[]): Estimate | undefined => {
  if (values.length === 0) return undefined;
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  const squares = values.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  return { mean, within: 2 * Math.sqrt(squares / (values.length - 1) / values.length) };
};

const byDeed = (scores: readonly Score[]): Summary['deeds'] => {
  const dips = scores.reduce((sum, one) => sum + one.dips, 0);
  return deeds.map((deed) => {
    const times = scores.reduce((sum, one) => sum + (one.deeds[deed] ?? 0), 0);
    return [deed, (takes[deed] * times) / dips];
  });
};

export const summary = (room: string, decider: string, scores: readonly Score[]): Summary => {
  const all: Summary = {
    room,
    decider,
    figures: {},
    said: scores.flatMap(({ said }) => said),
    deeds: byDeed(scores),
  };
  for (const name of figureNames) {
    const values = scores.map(figures[name]).filter((value) => value !== undefined);
    const found = estimate(values);
    if (found) all.figures[name] = found;
  }
  return all;
};
