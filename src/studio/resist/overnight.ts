import { definedOnly } from '../../definedOnly.ts';
import { addDays } from '../time/civilDay.ts';
import { duration, hours as hoursLong, instant, later, minutes, type Instant } from '../ids.ts';
import { nextOpenInstant, type OpeningHours } from '../time/openingHours.ts';
import { instantOf, wallOf } from '../time/wallTime.ts';

export const resists = ['wax', 'latex', 'hot-wax', 'tape'] as const;
export type Resist = (typeof resists)[number];

/** A resist coat, with the studio's rules for nights and hours. */
export interface DryingCoat {
  kind: Resist;
  onAt: Instant;
  zone: string;
  hours: OpeningHours;
  /** Drying hours of an emulsion in a usual room. */
  minimumHours: number;
  /** How many times longer it takes in this room. */
  dryingFactor: number;
  /** A keeper has said that the hours are enough here, without a night. */
  noNight?: true;
}

/** What decided the time: the hours of drying, the night, or the opening hours. */
export type DryWhy =
  | { because: 'at-once' }
  | { because: 'sets'; minutes: number }
  | {
      because: 'hours' | 'night' | 'opening';
      /** Hours of drying, the room's factor included. */
      dryHours: number;
      hoursEnd: Instant;
      nightEnds: Instant;
      noNight?: true;
    };

export type DryReady = { readyAt: Instant; why: DryWhy } | 'never';

/** Melted wax is hard once it is cold: common practice. */
const HOT_WAX_MINUTES = 15;
/** A night ends at five in the morning: common practice. */
const NIGHT_ENDS = { hour: 5, minute: 0 };

/** The next five in the morning, local time, after an instant. */
const nightEndAfter = (at: Instant, zone: string): Instant => {
  const today = wallOf(at, zone);
  const thisMorning = instantOf({ ...today, ...NIGHT_ENDS }, zone);
  return thisMorning > at ? thisMorning : instantOf({ ...addDays(today, 1), ...NIGHT_ENDS }, zone);
};

/**
 * When a resist coat may be glazed over. An emulsion must dry overnight: its hours must be over, a night must have
 * ended since it went on (unless a keeper said that no night is needed), and the studio must be open. Hours that the
 * clocks skip do not count.
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
  return { readyAt, why: { because, dryHours, hoursEnd, nightEnds, ...definedOnly({ noNight }) } };
};
