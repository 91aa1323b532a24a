import { firstOutside, valid, type Checked } from '../checked.ts';
import { normalQuantile } from './normal.ts';
import { studentQuantile } from './studentT.ts';
import { millimetres, seconds, type Millimetres, type Seconds } from '../units.ts';

/** One test tile: its dip time and the thickness of its coat. */
export interface DippedTile {
  dip: Seconds;
  thickness: Millimetres;
}

/** A line through the test tiles of one bucket and body, against the square root of time. */
export interface SqrtFit {
  /** a, the film that stays on the coat when the tile is drawn out, mm. */
  intercept: number;
  /** b, the coat that the body builds by absorbing, mm/√s. */
  slope: number;
  /** Standard deviation of tiles about the line, mm. */
  residual: number;
  tiles: number;
  meanRoot: number;
  spread: number;
}

/**
 * Regression of coat thickness on the square root of dip time, for the test tiles of one bucket and one body.
 * @formula L = a + b√t, least squares
 * @param tiles dip time, s, and coat thickness, mm, of each
 * @returns intercept, slope and scatter, never rounded
 * @range at least 3 tiles, longest and shortest dip 0.1 s apart or more, dips 0 to 3600 s, coats 0 to 20 mm; outside is refused
 * @source Adcock & McDowall 1957 for the law; Draper & Smith, Applied Regression Analysis, ch. 1 (from memory)
 * @example fitSqrt([{ dip: seconds(1), thickness: millimetres(0.5) }, { dip: seconds(4), thickness: millimetres(0.8) }, { dip: seconds(9), thickness: millimetres(1.1) }]) //=> { ok: true, value: { intercept: 0.2, slope: 0.3, residual: 0.000, tiles: 3, meanRoot: 2, spread: 2 } }
 */
export const fitSqrt = (tiles: readonly DippedTile[]): Checked<SqrtFit> => {
  const count = tiles.length;
  const outside =
    firstOutside(['test tiles', count, 3, 10_000]) ??
    firstOutside(
      ...tiles.flatMap(({ dip, thickness }) => [
        ['dip time', dip, 0, 3600] as const,
        ['coat thickness', thickness, 0, 20] as const,
      ]),
    );
  if (outside) return outside;
  const dips = tiles.map(({ dip }) => dip);
  const apart = firstOutside(['longest less shortest dip', Math.max(...dips) - Math.min(...dips), 0.1, 3600]);
  if (apart) return apart;
  const roots = dips.map((dip) => Math.sqrt(dip));
  const meanRoot = roots.reduce((sum, root) => sum + root, 0) / count;
  const meanThickness = tiles.reduce((sum, { thickness }) => sum + thickness, 0) / count;
  const spread = roots.reduce((sum, root) => sum + (root - meanRoot) ** 2, 0);
  const slope =
    tiles.reduce(
      (sum, { dip, thickness }) => sum + (Math.sqrt(dip) - meanRoot) * (thickness - meanThickness),
      0,
    ) / spread;
  const intercept = meanThickness - slope * meanRoot;
  const misfit = tiles.reduce(
    (sum, { dip, thickness }) => sum + (thickness - intercept - slope * Math.sqrt(dip)) ** 2,
    0,
  );
  return valid({
    intercept,
    slope,
    residual: Math.sqrt(misfit / (count - 2)),
    tiles: count,
    meanRoot,
    spread,
  });
};

/**
 * Coat thickness that the next piece will get, with its 90 % prediction interval.
 * @formula a + b√t ± max(t(0.95, n − 2)·s, 1.645·r/√12)·√(1 + 1/n + (√t − x̄)²/Sxx)
 * @param fit the line of this bucket and body · @param dip t, s · @param readTo r, what a thickness is read to, mm: tiles
 *   that happen to lie on a line are known no better than they were measured; 0 when it is not said
 * @returns expected thickness and both ends of the 90 % prediction interval, mm, never rounded; a low end under 0 says
 *   that the tiles do not tell
 * @range dip 0 to 3600 s, readTo 0 to 1 mm; outside is refused
 * @source Draper & Smith, Applied Regression Analysis, ch. 1, prediction of an individual observation (from memory);
 *   JCGM 100:2008, 4.3.7, for a reading that may lie anywhere in its last step
 * @example predictThickness({ fit: { intercept: 0.2, slope: 0.3, residual: 0.1, tiles: 3, meanRoot: 2, spread: 2 }, dip: seconds(4) }) //=> { ok: true, value: { expected: 0.8, low: 0.07095, high: 1.52905 } }
 */
export const predictThickness = ({
  fit,
  dip,
  readTo = millimetres(0),
}: {
  fit: SqrtFit;
  dip: Seconds;
  readTo?: Millimetres;
}): Checked<Record<'expected' | 'low' | 'high', Millimetres>> => {
  const outside = firstOutside(['dip time', dip, 0, 3600], ['step of the reading', readTo, 0, 1]);
  if (outside) return outside;
  const quantile = studentQuantile({ p: 0.95, degrees: fit.tiles - 2 });
  const reading = normalQuantile(0.95);
  if (!quantile.ok) return quantile;
  if (!reading.ok) return reading;
  const scatter = Math.max(quantile.value * fit.residual, (reading.value * readTo) / Math.sqrt(12));
  const root = Math.sqrt(dip);
  const expected = fit.intercept + fit.slope * root;
  const margin = scatter * Math.sqrt(1 + 1 / fit.tiles + (root - fit.meanRoot) ** 2 / fit.spread);
  return valid({
    expected: millimetres(expected),
    low: millimetres(expected - margin),
    high: millimetres(expected + margin),
  });
};

/**
 * Dip time for a wanted coat thickness.
 * @formula t = ((L − a)/b)²
 * @param fit the line of this bucket and body · @param thickness L, wanted, mm
 * @returns dip time, s, never rounded
 * @range a rising line, and L from a to what an hour gives; outside is refused
 * @source derived: the line turned round
 * @example dipFor({ fit: { intercept: 0.2, slope: 0.3, residual: 0.1, tiles: 3, meanRoot: 2, spread: 2 }, thickness: millimetres(0.8) }) //=> { ok: true, value: 4 }
 */
export const dipFor = ({ fit, thickness }: { fit: SqrtFit; thickness: Millimetres }): Checked<Seconds> =>
  firstOutside(
    ['slope of the tiles', fit.slope, 1e-6, 100],
    ['coat thickness', thickness, Math.max(0, fit.intercept), fit.intercept + 60 * fit.slope],
  ) ?? valid(seconds(((thickness - fit.intercept) / fit.slope) ** 2));
