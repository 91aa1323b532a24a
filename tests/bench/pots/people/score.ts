import { takes, type Deed } from '../physics/settings.ts';

/** What one decider made of one room. */
export class Score {
  visits = 0;
  dips = 0;
  /** Of the dips: from a pail that was right, and what of it was. */
  right = 0;
  gravityRight = 0;
  flowRight = 0;
  stirred = 0;
  sentAway = 0;
  readonly deeds: Partial<Record<Deed, number>> = {};
  presses = 0;
  characters = 0;
  changes = 0;
  harmful = 0;
  /** Chances that were said of a pail, and whether it was so. */
  readonly said: { chance: number; true: boolean }[] = [];

  spend(deed: Deed): void {
    this.deeds[deed] = (this.deeds[deed] ?? 0) + 1;
  }

  get minutes(): number {
    return deeds.reduce((sum, deed) => sum + takes[deed] * (this.deeds[deed] ?? 0), 0);
  }

  change(harmed: boolean): void {
    this.changes += 1;
    if (harmed) this.harmful += 1;
  }
}

export const deeds = Object.keys(takes).filter((name): name is Deed => name in takes);

/** The figures of a table, each a number for one seed; undefined where nothing was counted. */
export const figures = {
  'right %': (s: Score) => (100 * s.right) / s.dips,
  'gravity %': (s: Score) => (100 * s.gravityRight) / s.dips,
  'flow %': (s: Score) => (100 * s.flowRight) / s.dips,
  'stirred %': (s: Score) => (100 * s.stirred) / s.dips,
  minutes: (s: Score) => s.minutes / s.dips,
  presses: (s: Score) => (s.presses === 0 ? undefined : s.presses / s.dips),
  characters: (s: Score) => (s.presses === 0 ? undefined : s.characters / s.dips),
  'harm in 100': (s: Score) => (s.changes === 0 ? undefined : (100 * s.harmful) / s.changes),
  'changes %': (s: Score) => (100 * s.changes) / s.dips,
  'sent away %': (s: Score) => (100 * s.sentAway) / s.visits,
} as const satisfies Record<string, (score: Score) => number | undefined>;

export type Figure = keyof typeof figures;
export const figureNames = Object.keys(figures).filter((name): name is Figure => name in figures);
