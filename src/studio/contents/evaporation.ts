import { coverage95 } from '../../glaze/statistics/normal.ts';
import { millilitres, type Gravity, type Grams, type Millilitres } from '../../glaze/units.ts';
import { type DriftPoint, perGravity } from './driftPoint.ts';
import { driftPerDay, surpriseDeviations, waterGramsPerMl, type Estimate } from './contents.ts';
import { days, type Instant } from '../ids.ts';
import type { WithInterval } from './unloggedChange.ts';

/** Fewer readings than this, or readings of one day, give no rate. */
const fewestReadings = 4;
const shortestSpanDays = 2;

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
const weight = ({ sd }: DriftPoint) => 1 / sd ** 2;

/** The weighted squared error of two constants, with a step between them. */
const misfitOfStep = (points: readonly DriftPoint[], at: number): number => {
  const aboutMean = (part: readonly DriftPoint[]) => {
    const mean = sum(part.map((point) => weight(point) * point.value)) / sum(part.map(weight));
    return sum(part.map((point) => weight(point) * (point.value - mean) ** 2));
  };
  return aboutMean(points.slice(0, at)) + aboutMean(points.slice(at));
};

/** The slope is negated, so that a loss of water counts as positive. */
const lineThrough = (points: readonly DriftPoint[]) => {
  const weights = sum(points.map(weight));
  const day = (point: DriftPoint) => point.at / days(1);
  const middle = sum(points.map((point) => weight(point) * day(point))) / weights;
  const level = sum(points.map((point) => weight(point) * point.value)) / weights;
  const span = sum(points.map((point) => weight(point) * (day(point) - middle) ** 2));
  const slope = sum(points.map((p) => weight(p) * (day(p) - middle) * (p.value - level))) / span;
  const misfit = sum(points.map((p) => weight(p) * (p.value - level - slope * (day(p) - middle)) ** 2));
  return { loss: -slope, sd: 1 / Math.sqrt(span), misfit };
};

export type Evaporation = WithInterval<Millilitres> & { readings: number; since: Instant };

/**
 * Water that a pail loses in a day, from the slope of its readings; undefined when they are too few or do not lie
 * along a line.
 * @formula b = −Σw(t − t̄)(r − r̄)/Σw(t − t̄)², r grams of water to one of powder, w = 1/u²; rate = b·powder in the pail;
 *   u²(b) = 1/Σw(t − t̄)² + 6σ²/(5T), σ what drifts in a day, T the days that the readings span
 * @param points r less what the log changed it by, the oldest first · @param slurry gravity now · @param solids gravity of
 *   the powder · @param powder grams of it in the pail
 * @returns ml a day with its 95 % half-interval, never rounded
 * @range four readings or more over two days or more; a slope of 2.6 standard deviations or more; no single step fits better
 * @source weighted least squares, JCGM 100:2008, H.3; the slope of a random walk, 6σ²/(5T): *derived*
 */
export const evaporation = (
  points: readonly DriftPoint[],
  { slurry, particleGravity, powder }: { slurry: Gravity; particleGravity: Gravity; powder: Estimate<Grams> },
): Evaporation | undefined => {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < fewestReadings) return undefined;
  const span = (last.at - first.at) / days(1);
  if (span < shortestSpanDays) return undefined;
  const { loss, sd: fitted, misfit } = lineThrough(points);
  const sd = Math.hypot(
    fitted,
    driftPerDay * Math.abs(perGravity(slurry, particleGravity)) * Math.sqrt(6 / (5 * span)),
  );
  if (loss < surpriseDeviations * sd) return undefined;
  if (points.some((_, at) => at > 0 && misfitOfStep(points, at) < misfit)) return undefined;
  return {
    value: millilitres((loss * powder.value) / waterGramsPerMl),
    u95: (coverage95 * Math.hypot(sd * powder.value, loss * powder.sd)) / waterGramsPerMl,
    readings: points.length,
    since: first.at,
  };
};
