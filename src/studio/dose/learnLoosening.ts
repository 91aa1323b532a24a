import { bayesLine, chanceAbove, type LineMixture } from '../../glaze/statistics/bayesLine.ts';
import type { Gravity, Seconds } from '../../glaze/units.ts';
import type { LoosenPoint } from '../bucket/bucketState.ts';
import type { Window } from '../settings/bucketSettings.ts';

/** What a step of deflocculant, a drop in 250 ml, adds to ln seconds: below zero. A 90 % interval. */
export interface LearnedLoosening {
  value: number;
  low: number;
  high: number;
}

export type Loosening = { kind: 'not-enough' } | ({ kind: 'learned' } & LearnedLoosening);

/**
 * A weak prior, from memory: one step of the ladder takes a quarter off the seconds, give or take as much; a hundredth
 * of gravity adds a tenth. Two cup times of one bucket agree within 10 %, 19 times in 20 (common practice).
 */
const line = { perStep: -0.3, perGravity: 10 };
const spread = { level: 1.5, perStep: 0.25, perGravity: 5 };
const repeats = { middle: 0.036, spread: 0.8 };
/** A cup that has not run out by now never will, s. */
const wontRunAfter = 100;
/** So little off the seconds is no change; so many steps would show one (common practice). */
const unchangedWithin = 0.05;
const enoughSteps = 1.5;

const ownOf = (points: readonly LoosenPoint[], cup: string): LoosenPoint[] =>
  points.filter((point) => point.cup === cup || point.kind === cup);

/** The value of a step's effect that is exceeded with this probability. */
const above = (mixture: LineMixture, part: number): number => {
  let [low, high] = [-4, 4];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (chanceAbove(mixture, [0, 1, 0], middle) > part) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

/**
 * How much a step of deflocculant loosens a bucket, by its own readings before and after: the regression of ln seconds on
 * steps and gravity, with a prior. It needs a dose with a reading on each side, by one cup.
 */
export const learnLoosening = ({
  points,
  cup,
  gravity,
}: {
  points: readonly LoosenPoint[];
  cup: string;
  gravity: Gravity;
}): Loosening => {
  const own = ownOf(points, cup);
  const [first] = own;
  if (!first || new Set(own.map(({ doses }) => doses)).size < 2) return { kind: 'not-enough' };
  const start = Math.log(first.seconds === 'wont-run' ? wontRunAfter : first.seconds);
  const mixture = bayesLine({
    prior: {
      mean: [start, line.perStep, line.perGravity],
      covariance: [
        [spread.level ** 2, 0, 0],
        [0, spread.perStep ** 2, 0],
        [0, 0, spread.perGravity ** 2],
      ],
    },
    points: own
      .map((point) => ({
        at: [1, point.steps, point.gravity - gravity],
        seen: Math.log(point.seconds === 'wont-run' ? wontRunAfter : point.seconds),
        ...(point.seconds === 'wont-run' && { above: true as const }),
        noise: 1,
      }))
      .sort((a, b) => Number('above' in a) - Number('above' in b)),
    scale: repeats.middle,
    scaleSpread: repeats.spread,
  });
  if (!mixture.ok) return { kind: 'not-enough' };
  return {
    kind: 'learned',
    value: above(mixture.value, 0.5),
    low: above(mixture.value, 0.95),
    high: above(mixture.value, 0.05),
  };
};

const secondsOf = ({ seconds }: LoosenPoint): number => (seconds === 'wont-run' ? wontRunAfter : seconds);

/** How many times as slow it ran after a dose as before it: the quickest after it, since a cup that clogs only runs slower. */
const changedBy = (after: readonly LoosenPoint[], before: LoosenPoint): number =>
  Math.min(...after.map(secondsOf)) / secondsOf(before);

/**
 * Whether the last two doses, or more, left a bucket as thick as it was: each by what was read before it and after it, since
 * anything may have thickened it between them.
 */
export const stillThickAfter = (
  points: readonly LoosenPoint[],
  { cup, window }: { cup: string; window: Window<Seconds> },
): boolean => {
  const own = ownOf(points, cup);
  const last = own.at(-1);
  if (!last || secondsOf(last) <= window.high) return false;
  let changed = 1;
  let doses = last.doses;
  for (;;) {
    const before = own.findLast((point) => point.doses < doses);
    if (!before) return false;
    const here = doses;
    changed *= changedBy(
      own.filter((point) => point.doses === here),
      before,
    );
    doses = before.doses;
    if (last.doses - doses >= 2 && last.steps - before.steps >= enoughSteps)
      return changed > 1 - unchangedWithin;
  }
};
