import { coverage95 } from '../../glaze/statistics/normal.ts';
import { withInstrument } from '../belief/instruments.ts';
import { place, type Belief, type Glance } from '../belief/mixture.ts';
import type { Observed } from '../belief/observed.ts';
import { bias, noise } from '../belief/priors.ts';
import { pailVolumeFromGap } from '../contents/pailVolumeFromGap.ts';
import { minutes, since } from '../ids.ts';
import type { BucketSettings } from '../settings/bucketSettings.ts';
import { cupFor } from '../settings/cupFor.ts';
import type { StudioCup } from '../settings/studio.ts';
import type { BucketEntry, BucketEvent, CupTime } from './bucketEvent.ts';
import type { BucketState } from './bucketState.ts';
import { roomTemperature } from './flocculantSolution.ts';

/** A reading, with the bucket as it was before and after it. */
export interface ReadingEntry {
  entry: Omit<BucketEntry, 'event'> & { event: Extract<BucketEvent, { kind: 'reading' }> };
  before: BucketState;
  after: BucketState;
  cups: readonly StudioCup[];
}

/** What of a reading bears on the belief; its instruments have their places in the belief that comes with it. */
export interface Sights {
  belief: Belief;
  numbers: Observed[];
  /** Against the window, by eye; stuck when a cup would not run. */
  glance?: Glance | 'stuck';
}

/** Looks closer together than this are of one visit. */
const oneVisit = minutes(60);

/** A degree off room temperature changes water's viscosity by about this part of it, and a cup's seconds by no more. */
const perDegree = 0.024;

/** The window's own cup needs no place; another of its kind has one; another kind's seconds say nothing here. */
const cupIs = ({ cup, kind }: CupTime, { cup: set }: BucketSettings, cups: readonly StudioCup[]) => {
  if (set === undefined || cup === set || kind === set) return 'own';
  return kind !== 'own' && cupFor(undefined, set, cups).kind === kind ? 'like' : 'other';
};

const withVolume = (sights: Sights, { entry: { event }, after }: ReadingEntry): Sights => {
  const gap = event.gap === undefined ? undefined : pailVolumeFromGap(after.settings, event.gap);
  if (!gap?.ok || !(gap.value.value > 0)) return sights;
  const { value, sd } = gap.value;
  const seen = { at: place.volume, value: Math.log(value / 1000), sd: sd / value };
  return { ...sights, numbers: [...sights.numbers, seen] };
};

/** Only of a bucket stirred to the bottom, as for the state. */
const withGravity = (sights: Sights, { entry: { event, seq }, after }: ReadingEntry): Sights => {
  if (!event.gravity || after.believed?.seq !== seq) return sights;
  const { value, u95, by } = event.gravity;
  const sd = Math.max(noise.gravity, u95 / coverage95);
  if (by !== 'hydrometer')
    return { ...sights, numbers: [...sights.numbers, { at: place.gravity, value, sd }] };
  const placed = withInstrument(sights.belief, by, bias.hydrometer);
  return {
    ...sights,
    belief: placed.belief,
    numbers: [...sights.numbers, { at: place.gravity, value, sd, bias: placed.at }],
  };
};

const withCupTime = (sights: Sights, { entry, before, after, cups }: ReadingEntry): Sights => {
  const { flow, temperature } = entry.event;
  if (!flow || after.efflux?.at !== entry.at || after.efflux === before.efflux) return sights;
  const cup = cupIs(flow, after.settings, cups);
  if (cup === 'other') return sights;
  if (flow.seconds === 'wont-run') return { ...sights, glance: 'stuck' };
  const degrees = temperature === undefined ? 0 : temperature - roomTemperature;
  const seen = {
    at: place.flow,
    value: Math.log(flow.seconds),
    sd: Math.hypot(noise.flow, perDegree * degrees),
  };
  if (cup === 'own') return { ...sights, numbers: [...sights.numbers, seen] };
  const placed = withInstrument(sights.belief, `cup ${flow.cup}`, bias.cup);
  return { ...sights, belief: placed.belief, numbers: [...sights.numbers, { ...seen, bias: placed.at }] };
};

/** The same look by the same person in one visit counts once. */
const withLook = (sights: Sights, { entry: { event, at, by }, before, after }: ReadingEntry): Sights => {
  const { look } = event;
  if (!look || after.look?.at !== at || after.look === before.look) return sights;
  const { looked } = sights.belief;
  const again = looked?.by === by && looked.look === look && since(looked.at, at) <= oneVisit;
  return {
    ...sights,
    belief: { ...sights.belief, looked: { by, at, look } },
    ...(!again && { glance: look }),
  };
};

export const sightsInReading = (belief: Belief, reading: ReadingEntry): Sights =>
  [withVolume, withGravity, withCupTime, withLook].reduce<Sights>((sights, see) => see(sights, reading), {
    belief,
    numbers: [],
  });
