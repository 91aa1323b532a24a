import { definedOnly } from '../../definedOnly.ts';
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
import { withoutFlagged } from '../bucket/withoutFlagged.ts';
import { predictedNow } from '../bucket/predictedNow.ts';
import { normalizedText } from '../../text/normalizedText.ts';

/** Volume fraction of powder in a fresh coat (common practice: 0.5 to 0.6). */
const coatSolids = fraction(0.55);
/** Mass of studio bisque over that of its volume of water (common practice). */
const bisqueBulk = 1.85;
/** A dip time may lie this part of the tiles' range past the longest, and at this part of the shortest at the least. */
const extrapolationLimit = 0.5;
/** The resolution of a caliper on a dry coat (common practice). */
const readTo = millimetres(0.1);

export interface CoatWanted {
  thickness: Millimetres;
  /** Absorption of this piece, in per cent. */
  absorption?: number;
  body?: string;
  wall?: Millimetres;
  /** Fraction of its pores that is already full of water, as in a sponged piece. */
  filled?: number;
}

/** The 90 % interval of the dip time; open when the tiles do not determine it. */
export interface DipInterval {
  low: Seconds;
  high: Seconds | undefined;
}

export type DipTime =
  | { kind: 'few-tiles'; tiles: number; body?: string }
  | { kind: 'one-time'; seconds: Seconds }
  | { kind: 'which-body'; bodies: string[] }
  /** Longer dips did not give thicker coats. */
  | { kind: 'flat' }
  | { kind: 'no-gravity' }
  | { kind: 'too-dense' }
  /** The film that stays on when it is drawn out is thicker than the wanted coat. */
  | { kind: 'film'; film: Millimetres }
  | { kind: 'beyond-tiles'; seconds: Seconds; range: { low: Seconds; high: Seconds } }
  /** The wall is saturated with water before the coat is that thick. */
  | { kind: 'wall'; most: Millimetres }
  | {
      kind: 'dip';
      seconds: Seconds;
      interval: DipInterval;
      fit: SqrtFit;
      gravity: Gravity;
      range: { low: Seconds; high: Seconds };
      /** Absorption of the tiles, in per cent, when known. */
      tileAbsorption?: number;
      /** The thickest coat that the wall can absorb water for, when known. */
      wallMost?: Millimetres;
    };

const normalizedBody = (body: string | undefined) => normalizedText(body ?? '');

const betaOf = (slurry: Gravity, particleGravity: Gravity): number | undefined => {
  const phi = solidsVolumeFraction({ slurry, particleGravity });
  if (!phi.ok) return undefined;
  const beta = cakeRatio({ slurry: phi.value, cake: coatSolids });
  return beta.ok && beta.value > 0 ? beta.value : undefined;
};

/** A tile's dip time in today's slurry, for the same coat: by √β when the coat resists the water, by β when the body does. */
const asToday = (tile: TileDipped, ratio: number, power: 1 | 2) => ({
  dip: seconds(tile.seconds * ratio ** power),
  thickness: tile.thickness,
});

/** The shortest dip time at which an end of the prediction interval reaches a thickness. */
const firstDipReaching = (
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
  if (body !== undefined) return tiles.filter((tile) => normalizedBody(tile.body) === normalizedBody(body));
  const bodies = [...new Set(tiles.map((tile) => normalizedBody(tile.body)))];
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

/** How long to dip for a wanted coat, from the test tiles of this bucket and body, converted to today's gravity. */
export const dipTime = (state: BucketState, wanted: CoatWanted, now: Instant): DipTime => {
  const tiles = ofBody(state.tiles ?? [], wanted.body);
  if ('bodies' in tiles) return { kind: 'which-body', bodies: tiles.bodies };
  if (tiles.length < 3)
    return { kind: 'few-tiles', tiles: tiles.length, ...definedOnly({ body: wanted.body }) };
  const times = tiles.map((tile) => tile.seconds);
  const [shortest, longest] = [Math.min(...times), Math.max(...times)];
  if (longest - shortest < 0.1) return { kind: 'one-time', seconds: seconds(longest) };
  const gravity =
    predictedNow(state, now)?.value ?? (state.voided ? undefined : withoutFlagged(state).believed?.value);
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
  const most = range.high + extrapolationLimit * (range.high - range.low);
  if (!found.ok || found.value > most || found.value < extrapolationLimit * range.low) {
    // A dip of over an hour is refused; the answer says how long it would be.
    const told = ((wanted.thickness - fit.intercept) / fit.slope) ** 2;
    return { kind: 'beyond-tiles', seconds: found.ok ? found.value : seconds(told), range };
  }
  // If the body resists the water, a more absorbent one builds a thicker coat, at most in proportion to its pores.
  const drinks =
    wanted.absorption === undefined || tileAbsorption === undefined ? 1 : tileAbsorption / wanted.absorption;
  const reached = (end: 'low' | 'high') =>
    [fit, body.value].map((one) => firstDipReaching(one, wanted.thickness, end, 4 * most));
  const lows = reached('high').map((end) => end ?? found.value);
  const low = Math.min(found.value, ...lows) * Math.min(1, drinks);
  const highs = reached('low').map((end) => end ?? Infinity);
  const high = Math.max(found.value, ...highs) * Math.max(1, drinks);
  return {
    kind: 'dip',
    seconds: found.value,
    interval: { low: seconds(low), high: high === Infinity ? undefined : seconds(high) },
    fit,
    gravity,
    range,
    ...definedOnly({ tileAbsorption, wallMost }),
  };
};
