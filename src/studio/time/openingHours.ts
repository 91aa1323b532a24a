import { addDays, isSameDay, weekdayOf, type CivilDay } from './civilDay.ts';
import { instant, type Instant } from '../ids.ts';
import { instantOnDay, wallOf } from './wallTime.ts';
import { twoDigits } from '../../text/twoDigits.ts';

export const weekdays = [
  'sunday',
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
] as const;
export type WeekdayName = (typeof weekdays)[number];

/** Minutes after midnight on the wall clock; a studio that closes after midnight closes after 1440. */
export interface DayHours {
  opens: number;
  closes: number;
}

export interface OpeningHours {
  week: Readonly<Record<WeekdayName, DayHours | 'closed'>>;
  /** Days when the studio is closed, as `2026-12-25`; an evening that began the day before still runs to its end. */
  closures: readonly string[];
}

const eightToTen: DayHours = { opens: 8 * 60, closes: 22 * 60 };

/** 08:00 to 22:00 daily, until the studio says otherwise. */
export const usualHours: OpeningHours = {
  week: {
    sunday: eightToTen,
    monday: eightToTen,
    tuesday: eightToTen,
    wednesday: eightToTen,
    thursday: eightToTen,
    friday: eightToTen,
    saturday: eightToTen,
  },
  closures: [],
};

/** A day in the form of closures: `2026-12-25`. */
export const isoDay = ({ year, month, day }: CivilDay): string =>
  `${year}-${twoDigits(month)}-${twoDigits(day)}`;

interface Opening {
  from: Instant;
  until: Instant;
}

/** The opening hours of a day; undefined when it is closed, or when the zone skips the whole day. */
const openingOn = (day: CivilDay, { week, closures }: OpeningHours, zone: string): Opening | undefined => {
  const hours = week[weekdays[weekdayOf(day)]];
  if (hours === 'closed' || closures.includes(isoDay(day))) return undefined;
  const from = instantOnDay(day, hours.opens, zone);
  return isSameDay(wallOf(from, zone), day)
    ? { from, until: instantOnDay(day, hours.closes, zone) }
    : undefined;
};

/** The first instant from now on when the studio is open; at closing time it no longer is. Never, if it opens on no weekday. */
export const nextOpenInstant = (from: Instant, hours: OpeningHours, zone: string): Instant | 'never' => {
  const today = wallOf(from, zone);
  // Each closure can postpone an opening by a week, and a clock change that skips an opening by one more.
  const furthest = 7 * (hours.closures.length + 3);
  for (let days = -1; days <= furthest; days++) {
    const opening = openingOn(addDays(today, days), hours, zone);
    if (opening && opening.until > Math.max(from, opening.from)) return instant(Math.max(from, opening.from));
  }
  return 'never';
};
