import { bayesLine, chanceAbove, type LineMixture, type LinePoint } from '../../glaze/statistics/bayesLine.ts';
import { flowCup } from '../../glaze/flow/flowCup.ts';
import type { Gravity, Seconds } from '../../glaze/units.ts';
import type { CupTime } from '../bucket/bucketEvent.ts';
import type { Window } from '../settings/bucketSettings.ts';
import type { FlowPoint } from '../bucket/bucketState.ts';

/** Rungs of flocculant from now, each 0.03 % of the dry mass. */
export interface LearnedDose {
  rungs: number;
  /** Where nine lines in ten that fit the readings reach mid-window; open when too few of them ever do. */
  interval: { low: number; high: number | undefined };
}

export type Learned =
  | { kind: 'not-enough' }
  /** Two rungs made no difference: it is not flocculation that is missing. */
  | { kind: 'no-change' }
  | ({ kind: 'learned' } & LearnedDose);

/** A rung, in per cent of the dry mass. */
const rung = 0.03;
/** Never more at once than two, nor less than a hand can measure. */
const mostRungs = 2;
const leastRungs = 0.25;
/** Two readings of one bucket agree within a tenth. */
const noChange = 0.1;
/** The chance of passing the window's far edge that more than a rung may carry, and that the rung itself may. */
const chanceOfMore = 0.05;
const chanceOfRung = 0.2;
/** A cup that has not run out by now never will, s. */
const wontRunAfter = 100;

/**
 * Weak belief before any reading, all common practice: two to three rungs make a thin bucket creamy, so a rung adds about
 * 0.35 to the logarithm, give or take 0.25; a hundredth of gravity adds 0.06, give or take as much. Two readings of one
 * bucket agree within a tenth 19 times in 20, so one repeats within 3.6 %, or twice that, or half.
 */
const prior = { perRung: 0.35, perGravity: 6 };
const priorSpread = { level: 1.5, perRung: 0.25, perGravity: 6 };
const repeats = { middle: 0.036, spread: 0.8 };

/** Seconds that water takes through a cup, where its equation says 1 mm²/s; none for a cup that is only the studio's own. */
const waterTime = (kind: CupTime['kind']): number => {
  if (kind === 'own') return 0;
  const { slope, offset, loss } = flowCup(kind);
  return loss === 0 ? offset + 1 / slope : (1 + Math.sqrt(1 + 4 * slope * loss)) / (2 * slope);
};

export interface LearnFrom {
  points: readonly FlowPoint[];
  /** The cup that its window is for, and the window. */
  cup: string;
  window: Window<Seconds>;
  /** Of the bucket now. */
  gravity: Gravity;
  /** Flocculant in it now, in per cent of its dry mass, reckoned on from the last reading. */
  percent: number;
}

const linePoint = (point: FlowPoint, water: number, gravity: Gravity): LinePoint | undefined => {
  const at = [1, point.percent / rung, point.gravity - gravity];
  if (point.seconds === 'wont-run')
    return { at, seen: Math.log(wontRunAfter - water), above: true, noise: 1 };
  const over = point.seconds - water;
  // A reading near water's own time says only that it is as thin as water.
  return over > 0.2 ? { at, seen: Math.log(over), noise: point.seconds / over } : undefined;
};

const perDose = (points: readonly FlowPoint[]): { doses: number; seconds: number; percent: number }[] =>
  [...new Set(points.map(({ doses }) => doses))]
    .sort((a, b) => a - b)
    .map((doses) => {
      const own = points.filter((point) => point.doses === doses);
      const times = own.map(({ seconds }) => (seconds === 'wont-run' ? wontRunAfter : seconds));
      return {
        doses,
        seconds: times.reduce((sum, one) => sum + one, 0) / times.length,
        percent: own[0]?.percent ?? 0,
      };
    });

/** Whether the last two rungs, or more, left the flow as it was. */
const leftUnchanged = (levels: ReturnType<typeof perDose>, { low }: Window<Seconds>): boolean => {
  const last = levels.at(-1);
  if (!last || last.seconds >= low) return false;
  const since = levels.findLast(
    ({ doses, percent }) => doses <= last.doses - 2 && last.percent - percent >= 1.5 * rung,
  );
  return since !== undefined && last.seconds < since.seconds * (1 + noChange);
};

/** The first amount, in coarse steps and then between two of them, at which something holds; undefined when it never does. */
const firstRungs = (most: number, holds: (rungs: number) => boolean): number | undefined => {
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

/** More than the checkpoint lets in is as good as never. */
const farthest = 7;

const dose = (mixture: LineMixture, now: number, window: Window<Seconds>, water: number): LearnedDose => {
  const middle = Math.log((window.low + window.high) / 2 - water);
  const top = Math.log(window.high - water);
  const reaches = (mark: number) => (rungs: number) => chanceAbove(mixture, [1, now + rungs, 0], mark);
  const atMiddle = reaches(middle);
  const past = reaches(top);
  const needed = firstRungs(farthest, (rungs) => atMiddle(rungs) >= 0.5) ?? farthest;
  const safe = (most: number, chance: number) => firstRungs(most, (rungs) => past(rungs) > chance) ?? most;
  // As much as the line asks for and as is safe, but no less than the ladder's rung unless the line says that less will do.
  const rungs =
    needed >= 1
      ? Math.max(1, Math.min(needed, safe(mostRungs, chanceOfMore)))
      : Math.max(leastRungs, needed, safe(1, chanceOfRung));
  return {
    rungs,
    interval: {
      low: firstRungs(farthest, (one) => atMiddle(one) >= 0.05) ?? farthest,
      high: firstRungs(farthest, (one) => atMiddle(one) >= 0.95),
    },
  };
};

/**
 * What a bucket's own readings say of the next dose: a line of ln(t − t of water) on the flocculant in it, with its gravity
 * beside it. Two doses with a reading on each side, all by one cup, are the least.
 */
export const learnDose = ({ points, cup, window, gravity, percent }: LearnFrom): Learned => {
  const own = points.filter((point) => point.cup === cup || point.kind === cup);
  const levels = perDose(own);
  if (levels.length < 3) return { kind: 'not-enough' };
  if (leftUnchanged(levels, window)) return { kind: 'no-change' };
  const water = waterTime(own[0]?.kind ?? 'own');
  if (!(window.low - water > 0.2)) return { kind: 'not-enough' };
  const line = own
    .flatMap((point) => linePoint(point, water, gravity) ?? [])
    .sort((a, b) => Number(a.above ?? false) - Number(b.above ?? false));
  if (line.length < 3) return { kind: 'not-enough' };
  const mixture = bayesLine({
    prior: {
      mean: [Math.log((window.low + window.high) / 2 - water) - 1, prior.perRung, prior.perGravity],
      covariance: [
        [priorSpread.level ** 2, 0, 0],
        [0, priorSpread.perRung ** 2, 0],
        [0, 0, priorSpread.perGravity ** 2],
      ],
    },
    points: line,
    scale: repeats.middle,
    scaleSpread: repeats.spread,
  });
  if (!mixture.ok) return { kind: 'not-enough' };
  return { kind: 'learned', ...dose(mixture.value, percent / rung, window, water) };
};
