import { coverage95 } from '../../../glaze/statistics/normal.ts';
import { withInstrument } from '../../belief/instruments.ts';
import { place, type Belief } from '../../belief/mixture.ts';
import type { Observed } from '../../belief/observed.ts';
import { bias, noise, usualSeconds } from '../../belief/priors.ts';
import { scatterOf, withRepeat } from '../../belief/repeats.ts';
import { slowedBy, warmthAt } from '../../belief/warmth.ts';
import { visitGoesOn, type Glance, type Visit } from '../../belief/visit.ts';
import type { BucketEntry, CupTime, BucketEventOf } from '../bucketEvent.ts';
import type { BucketState } from '../bucketState.ts';
import { cupReads, vesselReads } from '../readsOf.ts';
import { isWindowsCup } from '../timeBand.ts';
import type { Millilitres } from '../../../glaze/units.ts';
import type { Estimate } from '../../contents/contents.ts';
import { volumeRead } from './applyVolume.ts';

/** A reading, with the bucket as it was before and after it. */
export interface ReadingEntry {
  entry: Omit<BucketEntry, 'event'> & { event: BucketEventOf<'reading'> };
  before: BucketState;
  after: BucketState;
}

/** What a reading says of the contents, and the belief with a place for each instrument of the reading. */
export interface Sights {
  belief: Belief;
  numbers: Observed[];
  /** Against the window, by eye; stuck when a cup would not run. */
  glances: (Glance | 'stuck')[];
}

/** The window's own cup needs no place; another of its kind has one; another kind's seconds say nothing here. */
const cupIs = (flow: CupTime, set: string | undefined, { cupKind }: Belief) => {
  if (isWindowsCup(flow, set)) return 'own';
  return flow.kind !== 'own' && flow.kind === cupKind ? 'like' : 'other';
};

const during = (belief: Belief, seen: Partial<Visit>): Belief =>
  belief.visit ? { ...belief, visit: { ...belief.visit, ...seen } } : belief;

const withNumber = (sights: Sights, seen: Observed, belief: Belief): Sights => ({
  ...sights,
  belief,
  numbers: [...sights.numbers, seen],
});

/** The same, read with another instrument than the one that the window was set with. */
const withOther = (sights: Sights, seen: Observed, belief: Belief, name: string, sd: number): Sights => {
  const placed = withInstrument(belief, name, sd);
  return withNumber(sights, { ...seen, bias: placed.at }, placed.belief);
};

/** How full a pail is said to be, as a belief takes it. */
export const volumeSeen = ({ value, sd }: Estimate<Millilitres>): Observed => ({
  at: place.volume,
  value: Math.log(value / 1000),
  sd: sd / value,
});

const withVolume = (sights: Sights, { entry: { event }, after }: ReadingEntry): Sights => {
  const found = volumeRead(after.settings, event);
  return found ? withNumber(sights, volumeSeen(found), sights.belief) : sights;
};

/**
 * A weighing is as exact as its vessel allows, or as repeated weighings with that vessel have shown; until then, as those
 * with an unnamed one.
 */
export const weighedSd = (belief: Belief, vessel: string | undefined, sd: number): number => {
  const unnamed = scatterOf(belief, vesselReads(undefined), sd);
  const found = vessel === undefined ? unnamed : scatterOf(belief, vesselReads(vessel), unnamed);
  return Math.max(noise.gravity, Math.min(sd, found));
};

/** Only of a bucket stirred to the bottom, as for the state. */
const withGravity = (sights: Sights, { entry: { event, seq }, after }: ReadingEntry): Sights => {
  if (!event.gravity || after.believed?.seq !== seq) return sights;
  const { value, u95, by, vessel } = event.gravity;
  const sd = u95 / coverage95;
  const seen = { at: place.gravity, value, sd: Math.max(noise.gravity, sd) };
  const weighed = during(sights.belief, { weighed: true });
  if (by === 'stated') return withNumber(sights, seen, weighed);
  if (by === 'hydrometer') return withOther(sights, seen, weighed, by, bias.hydrometer);
  const asWeighed = { ...seen, sd: weighedSd(sights.belief, vessel, sd) };
  return withNumber(sights, asWeighed, withRepeat(weighed, vesselReads(vessel), value, sd));
};

const withCupTime = (sights: Sights, { entry, before, after }: ReadingEntry): Sights => {
  const { flow, temperature } = entry.event;
  if (!flow || after.efflux?.at !== entry.at || after.efflux === before.efflux) return sights;
  const cup = cupIs(flow, after.settings.cup, sights.belief);
  if (cup === 'other') return sights;
  const read = during(sights.belief, { timed: true });
  if (flow.seconds === 'wont-run') return { ...sights, belief: read, glances: ['stuck'] };
  const slow = slowedBy(warmthAt(sights.belief, entry.at, temperature));
  const kind = cupReads(flow.cup);
  const value = Math.log(flow.seconds) - slow.by;
  const sd = Math.hypot(scatterOf(sights.belief, kind, noise.flow), slow.sd);
  const seen = { at: place.flow, value, sd };
  const timed = withRepeat(read, kind, value, usualSeconds);
  return cup === 'own'
    ? withNumber(sights, seen, { ...timed, cupKind: flow.kind })
    : withOther(sights, seen, timed, kind, bias.cup);
};

/** The same look by the same person in one visit counts once. */
const withLook = (sights: Sights, { entry: { event, at, by }, before, after }: ReadingEntry): Sights => {
  const { look } = event;
  if (!look || after.look?.at !== at || after.look === before.look) return sights;
  const { visit } = sights.belief;
  const again = visit?.by === by && visit.look === look;
  const glances = again ? sights.glances : [...sights.glances, look];
  return { ...sights, belief: during(sights.belief, { look, by }), glances };
};

/** What a reading bears on; a bucket that was read at rest has not begun a visit. */
export const sightsInReading = (belief: Belief, reading: ReadingEntry): Sights => {
  const { at, event } = reading.entry;
  const told =
    event.temperature === undefined ? belief : { ...belief, warmth: { at, celsius: event.temperature } };
  const started = { ...told, visit: visitGoesOn(belief, at) };
  const sights = [withVolume, withGravity, withCupTime, withLook].reduce<Sights>(
    (so, see) => see(so, reading),
    { belief: started, numbers: [], glances: [] },
  );
  return sights.belief.visit === started.visit ? { ...sights, belief: told } : sights;
};
