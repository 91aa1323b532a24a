import { hinderedFallTime } from '../../glaze/slurry/settling.ts';
import { celsius, micrometres, millimetres, type Micrometres, type Millimetres } from '../../glaze/units.ts';
import type { Observation } from './bucketEvent.ts';
import type { BucketState, Rests } from './bucketState.ts';
import { duration, hours, minutes, since, type Duration, type Instant } from '../ids.ts';

/** How long a bucket may rest until a keeper says otherwise (common practice). */
export const usualRest = hours(1);

/**
 * Coarse grains need at least this long to fall the depth of a pail: what is seen earlier dates from before the stir.
 */
const earliestSign = minutes(10);

/** Folds what was seen of a bucket at rest. A cake that was already there says nothing about this rest. */
export const applyRest = (state: BucketState, seen: readonly Observation[], at: Instant): BucketState => {
  if (!state.stir || seen.length === 0) return state;
  const rest = since(state.stir.at, at);
  const settled = seen.includes('clear-water') || (seen.includes('cake') && !state.cake);
  const known: Rests = state.rests ?? { longest: duration(0), count: 0 };
  if (settled && rest >= earliestSign)
    return { ...state, rests: { ...known, shortest: duration(Math.min(rest, known.shortest ?? rest)) } };
  if (!seen.includes('none') || settled) return state;
  const isNew = rest > usualRest && known.counted !== state.stir.at;
  return {
    ...state,
    rests: {
      ...known,
      longest: duration(Math.max(rest, known.longest)),
      ...(isNew && { count: known.count + 1, counted: state.stir.at }),
    },
  };
};

/** After so many rests without settling, the bucket may rest longer than the usual hour (common practice). */
const restsToLearnFrom = 3;

const between = (one: Duration, other: Duration): Duration => duration(Math.sqrt(one * other));

/**
 * How long after a stir a bucket may be used without another stir: as its keeper set it, or less when it was seen to
 * settle sooner. When no keeper set it, it may grow beyond the usual hour once the bucket has stayed in suspension
 * often enough.
 */
export const restLimitOf = ({
  settings: { restLimit },
  rests,
}: Pick<BucketState, 'settings' | 'rests'>): { limit: Duration; learned?: Rests } => {
  if (!rests) return { limit: restLimit };
  const { longest, count, shortest } = rests;
  const mayGrow = restLimit === usualRest && count >= restsToLearnFrom && longest > restLimit;
  if (shortest === undefined) return mayGrow ? { limit: longest, learned: rests } : { limit: restLimit };
  // When observations contradict each other, the shorter time counts.
  const stood = duration(longest < shortest ? Math.max(longest, shortest / 2) : shortest / 2);
  const limit = duration(Math.max(earliestSign, between(stood, shortest)));
  if (limit < restLimit) return { limit, learned: rests };
  return mayGrow && longest < shortest
    ? { limit: between(longest, shortest), learned: rests }
    : { limit: restLimit };
};

/**
 * Clay grains are finer than this, ISO 14688-1 (from memory). Grains coarser than `coarse` are sieved out of most
 * glazes (common practice).
 */
const claySize = micrometres(2);
const coarsestGrain = micrometres(45);
/** Nobody notices less clear water than this (common practice). */
const noticedClearWater = millimetres(5);
const depth = millimetres(300);
const room = celsius(20);

/**
 * When the grains of a bucket without flocculant would settle: `coarse` ones on the bottom first, a clear layer over
 * the clay last. A bucket that stays in suspension longer is held by a gel, which this does not describe.
 */
export const looseGrainsSettle = ({
  predicted,
  settings,
}: Pick<BucketState, 'predicted' | 'settings'>): { from: Duration; until: Duration } | undefined => {
  if (!predicted) return undefined;
  const time = (diameter: Micrometres, distance: Millimetres) =>
    hinderedFallTime({
      diameter,
      particleGravity: settings.solids,
      slurry: predicted.value,
      distance,
      temperature: room,
    });
  const [from, until] = [
    time(coarsestGrain, settings.shape?.height ?? depth),
    time(claySize, noticedClearWater),
  ];
  return from.ok && until.ok
    ? { from: duration(1000 * from.value), until: duration(1000 * until.value) }
    : undefined;
};
