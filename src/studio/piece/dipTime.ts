import { cakeRatio } from '../../glaze/body/filtration.ts';
import { solidsVolumeFraction } from '../../glaze/slurry/slurry.ts';
import { dipFor, fitSqrt, predictThickness, type SqrtFit } from '../../glaze/statistics/sqrtFit.ts';
import {
  fraction,
  millimetres,
  seconds,
  type Gravity,
  type Millimetres,
  type Seconds,
} from '../../glaze/units.ts';
import { wallLimitedThickness } from '../../glaze/body/wallUptake.ts';
import type { BucketState, TileDipped } from '../bucket/bucketState.ts';
import type { Instant } from '../ids.ts';
import { predictedNow } from '../bucket/predictedNow.ts';

/** Powder in a fresh coat by volume (common practice: 0.5 to 0.6). */
const coatSolids = fraction(0.55);
/** Studio bisque weighs so many times its volume of water (common practice). */
const bisqueBulk = 1.85;
/** How far past the longest tile a dip time may lie, in parts of the tiles' range; and below the shortest, in parts of it. */
const farthest = 0.5;
/** A caliper's reading of a dry coat (common practice). */
const readTo = millimetres(0.1);

export interface CoatWanted {
  thickness: Millimetres;
  /** Of this piece, in per cent. */
  absorption?: number;
  body?: string;
  wall?: Millimetres;
  /** Part of its pores full of water already: a piece that was sponged. */
  filled?: number;
}

/** Seconds in which nine coats in ten reach the wanted thickness; open when the tiles do not say. */
export interface DipInterval {
  low: Seconds;
  high: Seconds | undefined;
}

export type DipTime =
  | { kind: 'few-tiles'; tiles: number; body?: string }
  | { kind: 'one-time'; seconds: Seconds }
  | { kind: 'which-body'; bodies: string[] }
  /** Longer dips made no thicker coat. */
  | { kind: 'flat' }
  | { kind: 'no-gravity' }
  | { kind: 'too-dense' }
  /** What drains onto it is thicker than what is wanted. */
  | { kind: 'film'; film: Millimetres }
  | { kind: 'beyond-tiles'; seconds: Seconds; range: { low: Seconds; high: Seconds } }
  /** The wall is full of water before the coat is so thick. */
  | { kind: 'wall'; most: Millimetres }
  | {
      kind: 'dip';
      seconds: Seconds;
      interval: DipInterval;
      fit: SqrtFit;
      gravity: Gravity;
      range: { low: Seconds; high: Seconds };
      /** Of the tiles, in per cent, when it was said. */
      tileAbsorption?: number;
      /** The thickest coat that the wall can draw, when it is known. */
      wallMost?: Millimetres;
    };

const folded = (body: string | undefined) => (body ?? '').trim().toLowerCase();

const betaOf = (slurry: Gravity, particleGravity: Gravity): number | undefined => {
  const phi = solidsVolumeFraction({ slurry, particleGravity });
  if (!phi.ok) return undefined;
  const beta = cakeRatio({ slurry: phi.value, cake: coatSolids });
  return beta.ok && beta.value > 0 ? beta.value : undefined;
};

/** The dip in today's slurry that makes the coat of a tile's own: √β when the coat holds the water back, β when the body does. */
const asToday = (tile: TileDipped, ratio: number, power: 1 | 2) => ({
  dip: seconds(tile.seconds * ratio ** power),
  thickness: tile.thickness,
});

/** The first dip time from which an end of the prediction reaches a thickness. */
const reaches = (
  fit: SqrtFit,
  thickness: Millimetres,
  end: 'low' | 'high',
  longest: number,
): Seconds | undefined => {
  const steps = 600;
  for (let i = 0; i <= steps; i++) {
    const dip = seconds(longest * (i / steps) ** 2);
    const found = predictThickness({ fit, dip, readTo });
    if (found.ok && found.value[end] >= thickness) return dip;
  }
  return undefined;
};

const mean = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((sum, one) => sum + one, 0) / values.length;

const ofBody = (
  tiles: readonly TileDipped[],
  body: string | undefined,
): TileDipped[] | { bodies: string[] } => {
  if (body !== undefined) return tiles.filter((tile) => folded(tile.body) === folded(body));
  const bodies = [...new Set(tiles.map((tile) => folded(tile.body)))];
  return bodies.length > 1 ? { bodies: bodies.filter((one) => one !== '') } : [...tiles];
};

const wallMostOf = (
  beta: number,
  { wall, filled = 0 }: CoatWanted,
  absorption: number | undefined,
): Millimetres | undefined => {
  if (wall === undefined || absorption === undefined) return undefined;
  const porosity = fraction((absorption / 100) * bisqueBulk);
  const most = wallLimitedThickness({ beta, porosity, wall, filled: fraction(filled) });
  return most.ok ? most.value : undefined;
};

/** How long to dip a piece of a body for a wanted coat, by the test tiles of this bucket, brought to today's gravity. */
export const dipTime = (state: BucketState, wanted: CoatWanted, now: Instant): DipTime => {
  const tiles = ofBody(state.tiles ?? [], wanted.body);
  if ('bodies' in tiles) return { kind: 'which-body', bodies: tiles.bodies };
  if (tiles.length < 3)
    return {
      kind: 'few-tiles',
      tiles: tiles.length,
      ...(wanted.body !== undefined && { body: wanted.body }),
    };
  const times = tiles.map((tile) => tile.seconds);
  const [shortest, longest] = [Math.min(...times), Math.max(...times)];
  if (longest - shortest < 0.1) return { kind: 'one-time', seconds: seconds(longest) };
  const gravity = predictedNow(state, now)?.value ?? (state.voided ? undefined : state.believed?.value);
  if (gravity === undefined) return { kind: 'no-gravity' };
  const { solids: particleGravity } = state.settings;
  const beta = betaOf(gravity, particleGravity);
  const ratios = tiles.map((tile) => {
    const then = betaOf(tile.gravity ?? gravity, particleGravity);
    return then === undefined || beta === undefined ? undefined : then / beta;
  });
  if (beta === undefined || ratios.includes(undefined)) return { kind: 'too-dense' };
  const fitted = (power: 1 | 2) => fitSqrt(tiles.map((tile, i) => asToday(tile, ratios[i] ?? 1, power)));
  const [coat, body] = [fitted(1), fitted(2)];
  if (!coat.ok || !body.ok || !(coat.value.slope > 1e-6) || !(body.value.slope > 1e-6))
    return { kind: 'flat' };
  const fit = coat.value;
  if (wanted.thickness <= fit.intercept) return { kind: 'film', film: millimetres(fit.intercept) };
  const tileAbsorption = mean(tiles.flatMap(({ absorption }) => absorption ?? []));
  const wallMost = wallMostOf(beta, wanted, wanted.absorption ?? tileAbsorption);
  if (wallMost !== undefined && wanted.thickness > wallMost) return { kind: 'wall', most: wallMost };

  const found = dipFor({ fit, thickness: wanted.thickness });
  const today = tiles.map((tile, i) => tile.seconds * (ratios[i] ?? 1));
  const range = { low: seconds(Math.min(...today)), high: seconds(Math.max(...today)) };
  const most = range.high + farthest * (range.high - range.low);
  if (!found.ok || found.value > most || found.value < farthest * range.low) {
    // Over an hour is refused as a dip time, and told as what it would be.
    const told = ((wanted.thickness - fit.intercept) / fit.slope) ** 2;
    return { kind: 'beyond-tiles', seconds: found.ok ? found.value : seconds(told), range };
  }
  // A body that drinks more draws at most in proportion to its pores, if it is the body that holds the water back.
  const drinks =
    wanted.absorption === undefined || tileAbsorption === undefined ? 1 : tileAbsorption / wanted.absorption;
  const ends = [fit, body.value].map((one) => ({
    low: reaches(one, wanted.thickness, 'high', 4 * most) ?? found.value,
    high: reaches(one, wanted.thickness, 'low', 4 * most),
  }));
  const low = Math.min(found.value, ...ends.map((end) => end.low)) * Math.min(1, drinks);
  const highs = ends.map((end) => end.high);
  const high = highs.some((end) => end === undefined)
    ? undefined
    : Math.max(found.value, ...highs.flatMap((end) => end ?? [])) * Math.max(1, drinks);
  return {
    kind: 'dip',
    seconds: found.value,
    interval: { low: seconds(low), high: high === undefined ? undefined : seconds(high) },
    fit,
    gravity,
    range,
    ...(tileAbsorption !== undefined && { tileAbsorption }),
    ...(wallMost !== undefined && { wallMost }),
  };
};
