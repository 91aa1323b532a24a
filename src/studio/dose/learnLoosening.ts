import { chanceAbove, type LineMixture } from '../../glaze/statistics/bayesLine.ts';
import { bisection } from '../../glaze/statistics/bisection.ts';
import type { Gravity, Seconds } from '../../glaze/units.ts';
import type { LoosenPoint } from '../bucket/bucketState.ts';
import type { Window } from '../settings/bucketSettings.ts';
import { flowLine, secondsOf, timedWith } from './flowLine.ts';

/** What a step of deflocculant, a drop in 250 ml, adds to ln seconds: below zero. A 90 % interval. */
export interface LearnedLoosening {
  value: number;
  low: number;
  high: number;
}

export type Loosening = { kind: 'not-enough' } | ({ kind: 'learned' } & LearnedLoosening);

/**
 * A weak prior, from memory: one step of the ladder takes a quarter off the seconds, give or take as much; a hundredth
 * of gravity adds a tenth.
 */
const perStep = { mean: -0.3, sd: 0.25 };
const perGravity = { mean: 10, sd: 5 };
const levelSd = 1.5;
/** So little off the seconds is no change; so many steps would show one (common practice). */
const unchangedWithin = 0.05;
const enoughSteps = 1.5;

/** The value of a step's effect that is exceeded with this probability. */
const above = (line: LineMixture, part: number): number =>
  bisection((effect) => chanceAbove(line, [0, 1, 0], effect) > part, { low: -4, high: 4, rounds: 40 });

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
  const own = timedWith(points, cup);
  const [first] = own;
  if (!first || new Set(own.map(({ doses }) => doses)).size < 2) return { kind: 'not-enough' };
  const timed = own.map((point) => ({
    at: [1, point.steps, point.gravity - gravity],
    seen: Math.log(secondsOf(point)),
    ...(point.seconds === 'wont-run' && { above: true as const }),
    noise: 1,
  }));
  const level = { mean: Math.log(secondsOf(first)), sd: levelSd };
  const line = flowLine([level, perStep, perGravity], timed);
  if (!line) return { kind: 'not-enough' };
  return { kind: 'learned', value: above(line, 0.5), low: above(line, 0.95), high: above(line, 0.05) };
};

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
  const own = timedWith(points, cup);
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
