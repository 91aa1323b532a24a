import { hinderedFallTime } from '../../glaze/slurry/settling.ts';
import { celsius, micrometres, millimetres, type Micrometres, type Millimetres } from '../../glaze/units.ts';
import type { Observation } from './bucketEvent.ts';
import type { BucketState, Rests } from './bucketState.ts';
import { duration, hours, minutes, since, type Duration, type Instant } from '../ids.ts';

/** How long a bucket may rest until a keeper says otherwise (common practice). */
export const usualRest = hours(1);

/** Sooner than the coarsest grains fall the depth of a pail, what is seen was left over from before the stir. */
const soonest = minutes(10);

/** A look at a bucket at rest. What was a cake already is no news of this rest. */
export const applyRest = (state: BucketState, seen: readonly Observation[], at: Instant): BucketState => {
  if (!state.stir || seen.length === 0) return state;
  const rest = since(state.stir.at, at);
  const settled = seen.includes('clear-water') || (seen.includes('cake') && !state.cake);
  const known: Rests = state.rests ?? { longest: duration(0), count: 0 };
  if (settled && rest >= soonest)
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

/** So many rests without a sign before it may rest longer than the usual hour (common practice). */
const enough = 3;

const between = (one: Duration, other: Duration): Duration => duration(Math.sqrt(one * other));

/**
 * How long after a stir a bucket may be used without another: as its keeper set, shorter when it was seen to settle
 * sooner; and longer than the usual hour, when nobody set it, once it has stood up longer often enough.
 */
export const restLimitOf = ({
  settings: { restLimit },
  rests,
}: Pick<BucketState, 'settings' | 'rests'>): { limit: Duration; learned?: Rests } => {
  if (!rests) return { limit: restLimit };
  const { longest, count, shortest } = rests;
  if (shortest !== undefined) {
    // Seen settled sooner than it was seen to stand up, the sooner counts.
    const stood = longest < shortest ? duration(Math.max(longest, shortest / 2)) : duration(shortest / 2);
    const limit = duration(Math.max(soonest, between(stood, shortest)));
    if (limit < restLimit) return { limit, learned: rests };
    if (restLimit === usualRest && count >= enough && longest < shortest && longest > restLimit)
      return { limit: between(longest, shortest), learned: rests };
    return { limit: restLimit };
  }
  return restLimit === usualRest && count >= enough && longest > restLimit
    ? { limit: longest, learned: rests }
    : { limit: restLimit };
};

/** Clay is what is finer than this, by ISO 14688-1 (from memory); coarser than that is sieved out of most glazes (common practice). */
const clay = micrometres(2);
const coarse = micrometres(45);
/** Less clear water than this nobody notices (common practice). */
const noticed = millimetres(5);
const depth = millimetres(300);
const room = celsius(20);

/**
 * Between which times loose grains, of a bucket that is not flocculated, would settle: from the coarse ones on the
 * bottom to a clear layer over the clay. What stands up longer is held by a gel, which this does not describe.
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
  const [from, until] = [time(coarse, settings.shape?.height ?? depth), time(clay, noticed)];
  return from.ok && until.ok
    ? { from: duration(1000 * from.value), until: duration(1000 * until.value) }
    : undefined;
};
