import { definedOnly } from '../../../definedOnly.ts';
import { secondsAt20, warmthAt } from '../../belief/warmth.ts';
import type { BucketEntry, CupTime, BucketEventOf } from '../bucketEvent.ts';
import { coverage95 } from '../../../glaze/statistics/normal.ts';
import { gravity, type Celsius } from '../../../glaze/units.ts';
import type { BucketState, MeasuredGravity } from '../bucketState.ts';
import { addFlowPoint, addLoosenPoint, isDoseAtWork } from '../flowPoints.ts';
import { vesselReads } from '../readsOf.ts';
import { minutes, since, type Duration, type Instant } from '../../ids.ts';
import { applyRest } from '../rests.ts';
import { applyGravity } from './applyGravity.ts';
import { weighedSd } from './sightsInReading.ts';
import { applyObservations, withStir } from './applyObservations.ts';
import { withPrediction, applyVolume, volumeRead } from './applyVolume.ts';
import { without } from '../without.ts';

/** A reading is believed for so long after a stir: a 45 µm grain falls the depth of a pail in about ten minutes. */
export const believedAfterStir = minutes(10);
/** A dose is checked ten minutes after it was stirred in, so that check may come later than a reading. */
const doseLookedAtAfterStir = minutes(20);
/** Readings closer together than this, with no addition in between, belong to one session. */
const oneSession = minutes(60);

const isDoseUnlooked = ({ flocculant, efflux, look }: BucketState): boolean =>
  flocculant.lastAt !== undefined && efflux === undefined && look === undefined;

/** The inverse-variance weighted mean of the readings of one session that agree. */
const takenTogether = (
  { believed, together, moved, unknownSince, voided }: BucketState,
  seen: MeasuredGravity,
): BucketState['together'] => {
  if (!believed || voided || moved > 0 || unknownSince.length > 0) return undefined;
  if (since(believed.at, seen.at) > oneSession) return undefined;
  const before = together ?? { value: believed.value, u95: believed.u95, count: 1 };
  if (Math.abs(before.value - seen.value) > Math.hypot(before.u95, seen.u95)) return undefined;
  const [a, b] = [1 / before.u95 ** 2, 1 / seen.u95 ** 2];
  return {
    value: gravity((a * before.value + b * seen.value) / (a + b)),
    u95: 1 / Math.sqrt(a + b),
    count: before.count + 1,
  };
};

/** How exactly it was weighed: as the cup allows, or better when weighings with it repeated better. */
const shownWithin = (
  { belief }: BucketState,
  { u95, by, vessel }: NonNullable<BucketEventOf<'reading'>['gravity']>,
): number =>
  by === 'weight' && (belief.repeats?.[vesselReads(vessel)] ?? belief.repeats?.[vesselReads(undefined)])
    ? Math.min(u95, coverage95 * weighedSd(belief, vessel, u95 / coverage95))
    : u95;

/** A reading means the stir that was logged with it, or just before, in the time that a cup takes. */
const oneCup = minutes(5);

const isJustStirred = ({ stir }: BucketState, at: Instant): boolean =>
  stir !== undefined && !stir.addedSince && since(stir.at, at) <= oneCup;

/** What a dose does is learned from cup times as at one temperature. */
const at20 = (flow: CupTime, temperature: Celsius | undefined): CupTime =>
  flow.seconds === 'wont-run' ? flow : { ...flow, seconds: secondsAt20(flow.seconds, temperature) };

/** If a dose had its time before a reading, it is taken as stirred in when it was given: then the next reading counts too. */
const withDoseWorking = (next: BucketState, before: BucketState, at: Instant): BucketState => {
  const { lastAt, stirredIn } = before.flocculant;
  return lastAt === undefined || stirredIn !== undefined || isDoseAtWork(before, at)
    ? next
    : { ...next, flocculant: { ...next.flocculant, stirredIn: lastAt } };
};

/** Folds a reading. It is believed only when the bucket was stirred to the bottom just before and no cake was left. */
export const applyReading = (
  state: BucketState,
  entry: BucketEntry,
  event: BucketEventOf<'reading'>,
): BucketState => {
  const { at } = entry;
  let next = applyObservations(applyRest(state, event.seen, at), event.seen, at);
  if (event.stirred) {
    if (!isJustStirred(next, at)) next = withDoseWorking(withStir(next, { at }), state, at);
    if (!event.seen.includes('cake')) next = without(next, 'cake');
  }
  const stirredWithin = (most: Duration) =>
    event.stirred !== false &&
    next.stir !== undefined &&
    since(next.stir.at, at) <= most &&
    next.cake === undefined;
  const tooSoon = isDoseAtWork(state, at);
  const flowBelieved =
    !tooSoon && stirredWithin(isDoseUnlooked(next) ? doseLookedAtAfterStir : believedAfterStir);
  const believed =
    stirredWithin(believedAfterStir) &&
    // No slurry weighs as much as its own powder.
    (event.gravity === undefined || event.gravity.value < next.settings.solids);
  if (flowBelieved && event.flow)
    next.efflux = { ...event.flow, at, ...definedOnly({ temperature: event.temperature }) };
  if (flowBelieved && event.look) next.look = { look: event.look, at };
  // A finger test from before the last stir is not compared with a new cup time. When both are of one stirring, both
  // count.
  if (flowBelieved && event.flow && next.look?.stirredSince) next = without(next, 'look');
  if (flowBelieved && event.look && next.efflux?.stirredSince) next = without(next, 'efflux');
  if (event.flow || event.look) {
    next = without(next, 'restedFlow');
    if (!flowBelieved && !tooSoon) next.restedFlow = { at, ...definedOnly({ flow: event.flow }) };
  }
  const measured = event.gravity && {
    value: event.gravity.value,
    u95: shownWithin(state, event.gravity),
    at,
    seq: entry.seq,
  };
  if (measured && !believed) next.unbelieved = measured;
  const volume = volumeRead(next.settings, event);
  if (volume) next = applyVolume(next, volume, at);
  if (measured && believed) {
    const together = takenTogether(next, measured);
    next = without(without(next, 'unbelieved'), 'together');
    if (together) next.together = together;
    next = applyGravity(state, next, { measured, by: entry.by, ...definedOnly({ volume }) });
    next = without(next, 'voided');
    next.believed = measured;
    if (event.gravity?.by === 'hydrometer') next.byHydrometer = (state.byHydrometer ?? 0) + 1;
    if (event.gravity?.by === 'weight') next = without(next, 'byHydrometer');
    next.moved = 0;
    next.unknownSince = [];
    next.predicted = { value: measured.value, u95: measured.u95 };
  }
  const predicted = withPrediction(next);
  if (!flowBelieved || !event.flow) return predicted;
  const flow = at20(event.flow, warmthAt(state.belief, at, event.temperature));
  return addLoosenPoint(addFlowPoint(predicted, flow), flow);
};
