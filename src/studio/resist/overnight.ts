import { addDays } from '../time/civilDay.ts';
import { duration, hours as hoursLong, instant, later, minutes, type Instant } from '../ids.ts';
import { nextOpenInstant, type OpeningHours } from '../time/openingHours.ts';
import { instantOf, wallOf } from '../time/wallTime.ts';

export const resists = ['wax', 'latex', 'hot-wax', 'tape'] as const;
export type Resist = (typeof resists)[number];

/** A resist coat and what the studio says of nights and hours. */
export interface DryingCoat {
  kind: Resist;
  onAt: Instant;
  zone: string;
  hours: OpeningHours;
  /** Hours that an emulsion needs in a usual room. */
  minimumHours: number;
  /** How many times longer it needs in this one. */
  dryingFactor: number;
  /** A keeper has said that the hours alone do here. */
  noNight?: true;
}

/** What set the instant: the hours of drying, the night, or the door. */
export type DryWhy =
  | { because: 'at-once' }
  | { because: 'sets'; minutes: number }
  | {
      because: 'hours' | 'night' | 'opening';
      /** Hours of drying, with the room's factor in them. */
      dryHours: number;
      hoursEnd: Instant;
      nightEnds: Instant;
      noNight?: true;
    };

export type DryReady = { readyAt: Instant; why: DryWhy } | 'never';

/** Common practice: melted wax is hard as soon as it is cold. */
const HOT_WAX_MINUTES = 15;
/** Common practice: the night is over at five in the morning. */
const NIGHT_ENDS = { hour: 5, minute: 0 };

/** The first five in the morning on the wall after an instant. */
const nightEndAfter = (at: Instant, zone: string): Instant => {
  const today = wallOf(at, zone);
  const thisMorning = instantOf({ ...today, ...NIGHT_ENDS }, zone);
  return thisMorning > at ? thisMorning : instantOf({ ...addDays(today, 1), ...NIGHT_ENDS }, zone);
};

/**
 * When a resist coat may be glazed over. An emulsion must dry overnight: its hours must be over and, unless a keeper
 * has said that no night is needed here, a night must have ended since it went on, and then somebody must be there; hours that the clocks skip do not count.
 */
export const dryReady = ({
  kind,
  onAt,
  zone,
  hours,
  minimumHours,
  dryingFactor,
  noNight,
}: DryingCoat): DryReady => {
  if (kind === 'tape') return { readyAt: onAt, why: { because: 'at-once' } };
  if (kind === 'hot-wax')
    return {
      readyAt: later(onAt, minutes(HOT_WAX_MINUTES)),
      why: { because: 'sets', minutes: HOT_WAX_MINUTES },
    };
  const dryHours = minimumHours * dryingFactor;
  const hoursEnd = later(onAt, duration(Math.ceil(hoursLong(dryHours))));
  const nightEnds = noNight ? onAt : nightEndAfter(onAt, zone);
  const dry = instant(Math.max(hoursEnd, nightEnds));
  const readyAt = nextOpenInstant(dry, hours, zone);
  if (readyAt === 'never') return 'never';
  const because = readyAt > dry ? 'opening' : hoursEnd >= nightEnds ? 'hours' : 'night';
  return { readyAt, why: { because, dryHours, hoursEnd, nightEnds, ...(noNight && { noNight }) } };
};
