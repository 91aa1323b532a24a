import { addDays, type CivilDay } from './civilDay.ts';
import { instant, minutes, type Instant } from '../ids.ts';
import { instantOnDay, wallOf } from './wallTime.ts';

/** The time when no reminders are sent: minutes after midnight on the wall clock; a night ends after 1440. */
export interface QuietHours {
  from: number;
  until: number;
}

/** Common practice. */
export const usualQuiet: QuietHours = { from: 22 * 60, until: 24 * 60 + 8 * 60 };

/** A warning that would fall into quiet hours is sent so long before them. */
const BEFORE = minutes(5);

const quietOn = (day: CivilDay, { from, until }: QuietHours, zone: string) => ({
  from: instantOnDay(day, from, zone),
  until: instantOnDay(day, until, zone),
});

/** The quiet stretch that contains an instant; undefined when none does. */
export const quietAt = (at: Instant, quiet: QuietHours | undefined, zone: string) => {
  if (!quiet) return undefined;
  const today = wallOf(at, zone);
  return [addDays(today, -1), today]
    .map((day) => quietOn(day, quiet, zone))
    .find(({ from, until }) => from <= at && at < until);
};

/** The nearest instant outside quiet hours: after them for news, before them for a warning. */
export const outsideQuiet = (
  at: Instant,
  quiet: QuietHours | undefined,
  zone: string,
  rather: 'before' | 'after',
): Instant => {
  const stretch = quietAt(at, quiet, zone);
  if (!stretch) return at;
  return rather === 'after' ? stretch.until : instant(stretch.from - BEFORE);
};

const wholeDay = 24 * 60;

/** When the quiet hours around a time of day end, in minutes after midnight, and whether on the next day. */
export const quietEnd = (
  at: number,
  quiet: QuietHours | undefined,
): { at: number; nextDay: boolean } | undefined => {
  if (!quiet) return undefined;
  const isQuiet = (minutes: number): boolean => quiet.from <= minutes && minutes < quiet.until;
  if (isQuiet(at + wholeDay)) return { at: quiet.until - wholeDay, nextDay: false };
  return isQuiet(at) ? { at: quiet.until % wholeDay, nextDay: quiet.until >= wholeDay } : undefined;
};
