import type { Gravity } from '../../glaze/units.ts';
import type { Window } from '../settings/bucketSettings.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { outgrewReading } from '../bucket/couldMove.ts';
import { knownConditions, throughout, type Conditions } from './dipCondition.ts';
import type { Stretch } from './firedEvent.ts';
import { gravityBand } from '../verdict/gravityBand.ts';
import { days, instant, since, type Duration, type Instant, type StreamNo } from '../ids.ts';
import { outsideWindow, type OutsideWindow } from './outsideWindow.ts';
import { restLimitOf } from '../bucket/rests.ts';
import { facts, type Facts } from '../verdict/rules.ts';
import type { GravityBand } from '../verdict/verdict.ts';

/** Lately sieved: common practice. */
const lately = days(30);

export interface GravityThen {
  value: Gravity;
  u95: number;
  band: GravityBand;
  window: Window<Gravity>;
  /** Worked out from what went in since the reading, not read. */
  predicted: boolean;
}

/** What the logbook knows of a bucket at a dip, from the entries of before it. */
export interface BucketThen {
  no: StreamNo;
  name: string;
  gravity?: GravityThen;
  flow?: 'thin' | 'in' | 'thick';
  stirredAt?: Instant;
  /** How long it could rest by then, as set or learned. */
  restLimit: Duration;
  sievedAt?: Instant;
  conditions: Conditions;
  /** What was read last, or in the course of the day, and lay outside its window. */
  outside: OutsideWindow[];
  /** Gravity or flow changed in the course of it: nobody can tell which of them the dip had. */
  varied?: true;
}

/** The gravity that it had, when there was a believed reading that still told. */
const gravityThen = ({ state, now, measured, predicted }: Facts): GravityThen | undefined => {
  const { believed, unknownSince, settings } = state;
  const window = settings.gravity;
  if (!window || !believed || state.voided || unknownSince.length > 0) return undefined;
  if (since(believed.at, now) > settings.shelfLife) return undefined;
  const worked = outgrewReading(state);
  const found = worked ? predicted : measured;
  if (!found) return undefined;
  const { value, u95 } = found;
  return { value, u95, band: gravityBand({ value, u95 }, window).band, window, predicted: worked };
};

const bucketAt = (state: BucketState, now: Instant): BucketThen => {
  const f = facts(state, now);
  const { settings, stir, sieved } = state;
  const restLimit = restLimitOf(state).limit;
  const gravity = gravityThen(f);
  const flow = f.flow.band === 'unknown' ? undefined : f.flow.band;
  return {
    no: state.no,
    name: settings.name,
    restLimit,
    outside: outsideWindow(state, flow !== undefined),
    ...(gravity && { gravity }),
    ...(flow && { flow }),
    ...(stir && { stirredAt: stir.at }),
    ...(sieved && { sievedAt: sieved.at }),
    conditions: knownConditions({
      'gravity-over': gravity && gravity.band === 'high',
      'gravity-under': gravity && gravity.band === 'low',
      unmeasured: settings.gravity && gravity === undefined,
      'flow-thick': flow && flow === 'thick',
      'flow-thin': flow && flow === 'thin',
      rested: stir === undefined || since(stir.at, now) > restLimit,
      cake: state.cake !== undefined,
      lumps: state.unsieved !== undefined && state.unsieved.what !== 'frozen',
      'not-sieved':
        settings.mesh === 'never' ? undefined : sieved === undefined || since(sieved.at, now) > lately,
      'on-hold': state.hold !== undefined,
    }),
  };
};

/** Every moment at which something changed; between two of them things only grow older. */
const bucketsDuring = (states: readonly BucketState[], { from: begins, to }: Stretch): BucketThen[] => {
  // On the day on which it was set up it was dipped in after that.
  const setUp = states[0]?.foldedTo ?? begins;
  const from = instant(setUp <= to ? Math.max(begins, setUp) : begins);
  const first = states.findLastIndex(({ foldedTo }) => foldedTo <= from);
  let state = states[first];
  if (!state) return [];
  const found = [bucketAt(state, from)];
  for (const next of states.slice(first + 1)) {
    if (next.foldedTo > to) break;
    found.push(bucketAt(state, next.foldedTo), bucketAt(next, next.foldedTo));
    state = next;
  }
  if (to > from) found.push(bucketAt(state, to));
  return found;
};

/** Read, or flowing, now so and now so. What nobody knew before it was read is no change. */
const hasVaried = (all: readonly BucketThen[]): boolean =>
  new Set(all.flatMap(({ gravity }) => gravity?.band ?? [])).size > 1 ||
  new Set(all.flatMap(({ flow }) => flow ?? [])).size > 1;

/** What a bucket was like all through a stretch of time; undefined when that was before it was set up. */
export const bucketThen = (states: readonly BucketState[], stretch: Stretch): BucketThen | undefined => {
  const all = bucketsDuring(states, stretch);
  const last = all.at(-1);
  if (!last) return undefined;
  const told = new Set<string>();
  const outside = all
    .flatMap((one) => one.outside)
    .filter(({ what, at: readAt }) => {
      const key = `${what} ${readAt}`;
      return !told.has(key) && told.add(key);
    });
  const then: BucketThen = {
    ...last,
    conditions: throughout(all.map(({ conditions }) => conditions)),
    outside,
    ...(hasVaried(all) && { varied: true as const }),
  };
  if (all.some(({ gravity }) => gravity?.band !== last.gravity?.band)) delete then.gravity;
  if (all.some(({ flow }) => flow !== last.flow)) delete then.flow;
  if (all.some(({ stirredAt }) => stirredAt !== last.stirredAt)) delete then.stirredAt;
  return then;
};
