import { gravity, seconds, type Gravity, type Seconds } from '../../glaze/units.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { effluxAt20 } from '../bucket/effluxAt20.ts';
import { gravityBand } from '../verdict/gravityBand.ts';
import { unnamedCup } from '../settings/cupFor.ts';
import type { Window } from '../settings/bucketSettings.ts';

/** A bucket as it was when something was dipped in it. */
export interface DippedAt {
  gravity: Gravity;
  /** A cup time as it would be at 20 °C, and the cup. */
  flow?: { seconds: Seconds; cup: string };
}

/** A window for a bucket that has none. */
export interface WindowProposal {
  /** What it rests on: pieces that came out well, test tiles, or what it reads now. */
  from: 'fired' | 'tiles' | 'reading';
  count: number;
  /** The gravity in the middle. */
  right?: Gravity;
  gravity?: Window<Gravity>;
  efflux?: Window<Seconds>;
  cup?: string;
}

/** How far beside the gravity that was right a window reaches, and how far beside the seconds (common practice). */
const besideGravity = 0.02;
const besideSeconds = 0.15;

const mean = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0) / all.length;

const hundredth = (value: number): number => Math.round(value * 100) / 100;

const gravityAround = (all: readonly Gravity[]): Pick<WindowProposal, 'gravity' | 'right'> => {
  const right = gravity(hundredth(mean(all)));
  const [low, high] = [hundredth(right - besideGravity), hundredth(right + besideGravity)];
  return { right, gravity: { low: gravity(low), high: gravity(high) } };
};

/** To whole seconds, and at least a second to each side. */
const secondsAround = (all: readonly Seconds[]): Window<Seconds> => {
  const middle = mean(all);
  const low = Math.max(1, Math.min(Math.round(middle * (1 - besideSeconds)), Math.floor(middle - 1)));
  const high = Math.max(Math.round(middle * (1 + besideSeconds)), Math.ceil(middle + 1));
  return { low: seconds(low), high: seconds(high) };
};

/** The last cup time as it would be at 20 °C, which a window is held against; undefined when it would not run. */
export const ranAt20 = (state: BucketState): DippedAt['flow'] => {
  const timed = effluxAt20(state);
  return state.efflux && timed !== undefined && timed !== 'wont-run'
    ? { seconds: timed, cup: state.efflux.cup }
    : undefined;
};

/** How it runs, when its gravity is not outside its window: else the water is what is wrong. */
const runsNow = (state: BucketState): DippedAt['flow'] => {
  const { believed, settings } = state;
  const window = settings.gravity;
  if (window && (!believed || gravityBand(believed, window).band !== 'in')) return undefined;
  return ranAt20(state);
};

const flowAround = (
  times: readonly NonNullable<DippedAt['flow']>[],
  { settings }: BucketState,
): Pick<WindowProposal, 'efflux' | 'cup'> => {
  const cup = settings.cup ?? times.at(-1)?.cup;
  const own = times.filter((one) => one.cup === cup).map((one) => one.seconds);
  if (settings.efflux || cup === undefined || own.length === 0) return {};
  return { efflux: secondsAround(own), ...(cup !== unnamedCup && { cup }) };
};

/**
 * What a bucket's windows should be, where it has none: around what pieces that came out well were dipped in, else its
 * test tiles, else what it reads now, if a keeper calls that right. Undefined where nothing was read.
 */
export const proposeWindow = (
  state: BucketState,
  wellFired: readonly DippedAt[],
): WindowProposal | undefined => {
  const { settings, believed, voided, tiles = [] } = state;
  const now = runsNow(state);
  const fromTiles = tiles.flatMap((tile) => (tile.gravity === undefined ? [] : [tile.gravity]));
  const read = believed && !voided ? [believed.value] : [];
  const [from, gravities] =
    wellFired.length > 0
      ? (['fired', wellFired.map((one) => one.gravity)] as const)
      : fromTiles.length > 0
        ? (['tiles', fromTiles] as const)
        : (['reading', read] as const);
  const timed = wellFired.flatMap((one) => one.flow ?? []);
  const flow = flowAround(timed.length > 0 ? timed : now ? [now] : [], state);
  const weight = settings.gravity || gravities.length === 0 ? {} : gravityAround(gravities);
  if (!('gravity' in weight) && !('efflux' in flow)) return undefined;
  return { from, count: gravities.length, ...weight, ...flow };
};
