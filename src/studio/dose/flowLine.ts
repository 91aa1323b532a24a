import { bayesLine, type LineMixture, type LinePoint } from '../../glaze/statistics/bayesLine.ts';
import type { CupTime } from '../bucket/bucketEvent.ts';

/** A cup that has not run out by now never will, s. */
export const wontRunAfter = 100;

export const secondsOf = ({ seconds }: Pick<CupTime, 'seconds'>): number =>
  seconds === 'wont-run' ? wontRunAfter : seconds;

/** What was timed with one cup. */
export const timedWith = <P extends CupTime>(points: readonly P[], named: string): P[] =>
  points.filter(({ cup, kind }) => cup === named || kind === named);

/** Two cup times of one bucket agree within 10 %, 19 times in 20, give or take a factor of two (common practice). */
const repeats = { middle: 0.036, spread: 0.8 };

/**
 * The line of ln seconds on level, doses and gravity, by its coefficients as they are believed before and by what was
 * timed.
 */
export const flowLine = (
  prior: readonly { mean: number; sd: number }[],
  points: readonly LinePoint[],
): LineMixture | undefined => {
  const line = bayesLine({
    prior: {
      mean: prior.map(({ mean }) => mean),
      covariance: prior.map(({ sd }, i) => prior.map((_, j) => (i === j ? sd ** 2 : 0))),
    },
    points: points.toSorted((a, b) => Number(a.above ?? false) - Number(b.above ?? false)),
    scale: repeats.middle,
    scaleSpread: repeats.spread,
  });
  return line.ok ? line.value : undefined;
};
