import { definedOnly } from '../../definedOnly.ts';
import type { Gravity } from '../../glaze/units.ts';
import type { Window } from '../settings/bucketSettings.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { outgrewReading } from '../bucket/fold/couldMove.ts';
import { knownConditions, throughout, type Conditions } from './dipCondition.ts';
import type { TimeSpan } from './firedEvent.ts';
import { gravityBand } from '../verdict/gravityBand.ts';
import { days, instant, since, type Duration, type Instant, type StreamNo } from '../ids.ts';
import { countedReadings, withoutFlagged } from '../bucket/withoutFlagged.ts';
import { outsideWindow, type OutsideWindow } from './outsideWindow.ts';
import { restLimitOf } from '../bucket/rests.ts';
import { facts, type Facts } from '../verdict/facts.ts';
import type { GravityBand } from '../verdict/verdict.ts';

/** Sieved within so many days counts as lately: common practice. */
const sievedLatelyWithin = days(30);

export interface GravityThen {
  value: Gravity;
  u95: number;
  band: GravityBand;
  window: Window<Gravity>;
  /** Worked out from additions since the reading, not measured. */
  predicted: boolean;
}

/** What the logbook knows about a bucket at a dip, from earlier entries. */
export interface BucketThen {
  no: StreamNo;
  name: string;
  gravity?: GravityThen;
  flow?: 'thin' | 'in' | 'thick';
  stirredAt?: Instant;
  /** How long it could rest then, as set or learned. */
  restLimit: Duration;
  sievedAt?: Instant;
  conditions: Conditions;
  /** Values outside their windows: the last ones before the dip, or those read during the time it may have happened. */
  outside: OutsideWindow[];
  /** Gravity or flow changed during that time, so nobody can tell which value the dip had. */
  varied?: true;
}

/** The bucket's gravity at the time, if a believed reading was still valid. */
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
    ...definedOnly({ gravity, flow, stirredAt: stir?.at, sievedAt: sieved?.at }),
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
        settings.mesh === 'never'
          ? undefined
          : sieved === undefined || since(sieved.at, now) > sievedLatelyWithin,
      'on-hold': state.hold !== undefined,
    }),
  };
};

/** The state at every moment when something changed; in between only the ages of readings change. */
const bucketsDuring = (states: readonly BucketState[], { from: begins, to }: TimeSpan): BucketThen[] => {
  // On the day of its setup, the bucket was dipped in after the setup.
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

/** Whether readings or flow differed. A value that was unknown before its first reading did not change. */
const hasVaried = (all: readonly BucketThen[]): boolean =>
  new Set(all.flatMap(({ gravity }) => gravity?.band ?? [])).size > 1 ||
  new Set(all.flatMap(({ flow }) => flow ?? [])).size > 1;

/** Every state with the readings that counted: one that was flagged counts if the next one agreed with it. */
const asCounted = (states: readonly BucketState[]): BucketState[] => {
  const counted = countedReadings(states);
  return states.map((state) =>
    state.believed && counted.has(state.believed.seq) ? state : withoutFlagged(state),
  );
};

/** A bucket's conditions throughout a stretch of time; undefined when that was before its setup. */
export const bucketThen = (states: readonly BucketState[], stretch: TimeSpan): BucketThen | undefined => {
  const all = bucketsDuring(asCounted(states), stretch);
  const last = all.at(-1);
  if (!last) return undefined;
  const outside = all
    .flatMap((one) => one.outside)
    .filter(({ what, at }, i, each) => each.findIndex((one) => one.what === what && one.at === at) === i);
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
