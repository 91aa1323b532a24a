import type { Gravity, Seconds } from '../../glaze/units.ts';
import type { CupTime } from '../bucket/bucketEvent.ts';
import type { BucketSettings, Window } from '../settings/bucketSettings.ts';
import type { BucketState, MeasuredGravity } from '../bucket/bucketState.ts';
import type { Instant } from '../ids.ts';

/** A value that was read outside its window, whatever it can tell of a later moment. */
export type OutsideWindow =
  | { what: 'gravity'; value: Gravity; u95: number; window: Window<Gravity>; at: Instant; believed: boolean }
  | {
      what: 'efflux';
      seconds: CupTime['seconds'];
      window: Window<Seconds>;
      at: Instant;
      /** Still good at that moment; else it was stirred on since, or came too long after a stir. */
      believed: boolean;
    };

const outside = (value: number, { low, high }: Window<number>): boolean => value < low || value > high;

const gravityOutside = (
  { gravity: window }: BucketSettings,
  read: MeasuredGravity | undefined,
  believed: boolean,
): OutsideWindow[] =>
  window && read && outside(read.value, window)
    ? [{ what: 'gravity', value: read.value, u95: read.u95, window, at: read.at, believed }]
    : [];

/** Seconds of another cup than the window's are never compared. */
const isWindowsCup = ({ cup: own }: BucketSettings, { cup, kind }: CupTime): boolean =>
  own === undefined || cup === own || kind === own;

const effluxOutside = (
  settings: BucketSettings,
  read: (CupTime & { at: Instant }) | undefined,
  believed: boolean,
): OutsideWindow[] => {
  const { efflux: window } = settings;
  if (!window || !read || !isWindowsCup(settings, read)) return [];
  const { seconds, at } = read;
  return seconds === 'wont-run' || outside(seconds, window)
    ? [{ what: 'efflux', seconds, window, at, believed }]
    : [];
};

/** The last values that were read of a bucket, as far as they lay outside their windows. */
export const outsideWindow = (
  { settings, believed, unbelieved, efflux, restedFlow }: BucketState,
  flowTells: boolean,
): OutsideWindow[] => [
  ...gravityOutside(settings, believed, true),
  ...gravityOutside(settings, unbelieved, false),
  ...effluxOutside(settings, efflux, flowTells),
  ...effluxOutside(settings, restedFlow?.flow && { ...restedFlow.flow, at: restedFlow.at }, false),
];
