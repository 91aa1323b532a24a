import { chanceAbove, type LineMixture, type LinePoint } from '../../glaze/statistics/bayesLine.ts';
import { flowCup } from '../../glaze/flow/flowCup.ts';
import type { Gravity, Seconds } from '../../glaze/units.ts';
import type { CupTime } from '../bucket/bucketEvent.ts';
import type { Window } from '../settings/bucketSettings.ts';
import type { FlowPoint } from '../bucket/bucketState.ts';
import { doseStep } from '../belief/priors.ts';
import { flowLine, secondsOf, timedWith, wontRunAfter } from './flowLine.ts';

/** Dose steps of flocculant from now, each 0.03 % of the dry mass. */
export interface LearnedDose {
  doseSteps: number;
  /** The 90 % interval for reaching mid-window; open above when too few of the lines ever reach it. */
  interval: { low: number; high: number | undefined };
}

export type Learned =
  | { kind: 'not-enough' }
  /** Two dose steps made no difference: flocculant is not what is missing. */
  | { kind: 'no-change' }
  | ({ kind: 'learned' } & LearnedDose);

/** At most two steps at once, and at least what can be measured by hand. */
const mostDoseSteps = 2;
const leastDoseSteps = 0.25;
/** Two readings of one bucket agree within 10 %. */
const unchangedWithin = 0.1;
/** The accepted chance of passing the window's far edge: for more than one step, and for one step. */
const chanceOfMore = 0.05;
const chanceOfDoseStep = 0.2;

/**
 * A weak prior, all common practice. Two to three dose steps make a thin bucket creamy, so a step adds about 0.35 ±
 * 0.25 to the logarithm. A hundredth of gravity adds 0.06 ± 0.06.
 */
const perDoseStep = { mean: 0.35, sd: 0.25 };
const perGravity = { mean: 6, sd: 6 };
const levelSd = 1.5;

/** Seconds that water takes through a cup, where its equation gives 1 mm²/s; 0 for a cup of the studio's own. */
const waterTime = (kind: CupTime['kind']): number => {
  if (kind === 'own') return 0;
  const { slope, offset, loss } = flowCup(kind);
  return loss === 0 ? offset + 1 / slope : (1 + Math.sqrt(1 + 4 * slope * loss)) / (2 * slope);
};

export interface LearnFrom {
  points: readonly FlowPoint[];
  /** The cup that the window is for. */
  cup: string;
  window: Window<Seconds>;
  gravity: Gravity;
  /** Flocculant in it now, in per cent of its dry mass, worked out from the last reading. */
  percent: number;
}

const linePoint = (point: FlowPoint, water: number, gravity: Gravity): LinePoint | undefined => {
  const at = [1, point.percent / doseStep.percent, point.gravity - gravity];
  if (point.seconds === 'wont-run')
    return { at, seen: Math.log(wontRunAfter - water), above: true, noise: 1 };
  const over = point.seconds - water;
  // A time close to water's says only that the glaze is as thin as water.
  return over > 0.2 ? { at, seen: Math.log(over), noise: point.seconds / over } : undefined;
};

const perDose = (points: readonly FlowPoint[]): { doses: number; seconds: number; percent: number }[] =>
  [...new Set(points.map(({ doses }) => doses))]
    .sort((a, b) => a - b)
    .map((doses) => {
      const own = points.filter((point) => point.doses === doses);
      const seconds = own.map(secondsOf).reduce((sum, one) => sum + one, 0) / own.length;
      return { doses, seconds, percent: own[0]?.percent ?? 0 };
    });

/** Whether the last two dose steps, or more, left the flow as it was. */
const leftUnchanged = (levels: ReturnType<typeof perDose>, { low }: Window<Seconds>): boolean => {
  const last = levels.at(-1);
  if (!last || last.seconds >= low) return false;
  const since = levels.findLast(
    ({ doses, percent }) => doses <= last.doses - 2 && last.percent - percent >= 1.5 * doseStep.percent,
  );
  return since !== undefined && last.seconds < since.seconds * (1 + unchangedWithin);
};

/**
 * The smallest amount at which something holds, found in coarse steps and then by bisection; undefined when it never
 * does.
 */
const fewestDoseSteps = (most: number, holds: (steps: number) => boolean): number | undefined => {
  const step = 0.25;
  for (let far = 0; far <= most + 1e-9; far += step) {
    if (!holds(far)) continue;
    let [low, high] = [Math.max(0, far - step), far];
    for (let i = 0; i < 8 && high > 0; i++) {
      const middle = (low + high) / 2;
      if (holds(middle)) high = middle;
      else low = middle;
    }
    return high;
  }
  return undefined;
};

/** More than the checkpoint allows, which counts as never. */
const neverReachedDoseSteps = 7;

const dose = (mixture: LineMixture, now: number, window: Window<Seconds>, water: number): LearnedDose => {
  const middle = Math.log((window.low + window.high) / 2 - water);
  const top = Math.log(window.high - water);
  const reaches = (mark: number) => (steps: number) => chanceAbove(mixture, [1, now + steps, 0], mark);
  const atMiddle = reaches(middle);
  const past = reaches(top);
  const needed =
    fewestDoseSteps(neverReachedDoseSteps, (steps) => atMiddle(steps) >= 0.5) ?? neverReachedDoseSteps;
  const safe = (most: number, chance: number) =>
    fewestDoseSteps(most, (steps) => past(steps) > chance) ?? most;
  // As much as the line asks for and is safe, but at least one dose step, unless the line says that less is enough.
  const doseSteps =
    needed >= 1
      ? Math.max(1, Math.min(needed, safe(mostDoseSteps, chanceOfMore)))
      : Math.max(leastDoseSteps, needed, safe(1, chanceOfDoseStep));
  return {
    doseSteps,
    interval: {
      low: fewestDoseSteps(neverReachedDoseSteps, (one) => atMiddle(one) >= 0.05) ?? neverReachedDoseSteps,
      high: fewestDoseSteps(neverReachedDoseSteps, (one) => atMiddle(one) >= 0.95),
    },
  };
};

/**
 * The next dose by a bucket's own readings: the regression of ln(t − t of water) on its flocculant and its gravity.
 * It needs two doses with a reading on each side, all by one cup.
 */
export const learnDose = ({ points, cup, window, gravity, percent }: LearnFrom): Learned => {
  const own = timedWith(points, cup);
  const levels = perDose(own);
  if (levels.length < 3) return { kind: 'not-enough' };
  if (leftUnchanged(levels, window)) return { kind: 'no-change' };
  const water = waterTime(own[0]?.kind ?? 'own');
  if (!(window.low - water > 0.2)) return { kind: 'not-enough' };
  const timed = own.flatMap((point) => linePoint(point, water, gravity) ?? []);
  if (timed.length < 3) return { kind: 'not-enough' };
  const level = { mean: Math.log((window.low + window.high) / 2 - water) - 1, sd: levelSd };
  const line = flowLine([level, perDoseStep, perGravity], timed);
  if (!line) return { kind: 'not-enough' };
  return { kind: 'learned', ...dose(line, percent / doseStep.percent, window, water) };
};
