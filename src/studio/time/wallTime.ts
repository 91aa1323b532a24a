import { tzOffset } from '@date-fns/tz/tzOffset';
import { toDate } from 'date-fns/toDate';
import { addDays, dayNumber, dayNumbered, type CivilDay } from './civilDay.ts';
import { instant, type Instant } from '../ids.ts';

/** Local time of day with its date, to the minute. */
export interface WallTime extends CivilDay {
  hour: number;
  minute: number;
}

const MINUTE = 60_000;
const DAY = 86_400_000;

/** Whether this is a time zone that Node knows, such as `America/St_Johns`; a bare offset is not. */
export const isZone = (name: string): boolean => {
  if (!/^[A-Za-z]/.test(name)) return false;
  try {
    new Intl.DateTimeFormat('en-US', { timeZone: name });
    return true;
  } catch {
    return false;
  }
};

/** An instant as a Date, for libraries that need one. */
export const dateAt = (at: Instant) => toDate(at);

/** How far the zone's clocks are ahead of UTC at an instant, in milliseconds. */
export const offsetAt = (at: Instant, zone: string): number => {
  const minutes = tzOffset(zone, dateAt(at));
  if (Number.isNaN(minutes)) throw new RangeError(`no such time zone: ${zone}`);
  return Math.round(minutes * MINUTE);
};

/** The instant when clocks in UTC show the wall time. */
const asUtc = (wall: WallTime): number => dayNumber(wall) * DAY + (wall.hour * 60 + wall.minute) * MINUTE;

/** The local time in a zone at an instant; seconds are cut off. */
export const wallOf = (at: Instant, zone: string): WallTime => {
  const local = at + offsetAt(at, zone);
  const day = Math.floor(local / DAY);
  const minutes = Math.floor((local - day * DAY) / MINUTE);
  return { ...dayNumbered(day), hour: Math.floor(minutes / 60), minute: minutes % 60 };
};

/** When clocks in the zone show a wall time, earliest first: two instants when they go back, none when they skip it. */
const instantsOf = (wall: WallTime, zone: string): Instant[] => {
  const utc = asUtc(wall);
  const offsets = new Set([offsetAt(instant(utc - DAY), zone), offsetAt(instant(utc + DAY), zone)]);
  return [...offsets]
    .map((offset) => ({ offset, at: instant(utc - offset) }))
    .filter(({ offset, at }) => offsetAt(at, zone) === offset)
    .map(({ at }) => at)
    .sort((one, other) => one - other);
};

/**
 * The instant of a wall time. When the clocks show it twice, the earlier one; when they skip it, later by as much as
 * they skip: 02:30 becomes 03:30 on a day that skips 02:00 to 03:00.
 */
export const instantOf = (wall: WallTime, zone: string): Instant => {
  const [earliest] = instantsOf(wall, zone);
  const utc = asUtc(wall);
  return earliest ?? instant(utc - offsetAt(instant(utc - DAY), zone));
};

/** The instant so many minutes after a day's local midnight; from 1440 on it is the next day. */
export const instantOnDay = (day: CivilDay, minutes: number, zone: string): Instant => {
  const hour = Math.floor(minutes / 60);
  return instantOf({ ...addDays(day, Math.floor(hour / 24)), hour: hour % 24, minute: minutes % 60 }, zone);
};

/** The first instant of a day in a zone: midnight, or the end of the gap when clocks skip midnight. */
export const startOfDay = ({ year, month, day }: CivilDay, zone: string): Instant => {
  const midnight = { year, month, day, hour: 0, minute: 0 };
  const [earliest] = instantsOf(midnight, zone);
  if (earliest !== undefined) return earliest;
  let [low, high] = [asUtc(midnight) - DAY, asUtc(midnight) + DAY];
  const before = offsetAt(instant(low), zone);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (offsetAt(instant(middle), zone) === before) low = middle;
    else high = middle;
  }
  return instant(high);
};

export const startOfLocalDay = (at: Instant, zone: string): Instant => startOfDay(wallOf(at, zone), zone);

/** The same local time so many days later or earlier, which is not always a multiple of 24 hours. */
export const addLocalDays = (at: Instant, days: number, zone: string): Instant => {
  const wall = wallOf(at, zone);
  const withinMinute = at - Math.floor(at / MINUTE) * MINUTE;
  return instant(instantOf({ ...wall, ...addDays(wall, days) }, zone) + withinMinute);
};
