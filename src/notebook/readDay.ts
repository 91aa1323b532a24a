import { isCivilDay, type CivilDay } from '../studio/time/civilDay.ts';
import type { Instant } from '../studio/ids.ts';
import { readIsoInstant } from '../studio/time/isoInstant.ts';
import { instantOnDay } from '../studio/time/wallTime.ts';

/** In which order day and month stand, where a date does not begin with its year. */
export const dayOrders = ['d/m/y', 'm/d/y'] as const;
export type DayOrder = (typeof dayOrders)[number];

const yearFirst = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?!\d)/;
const yearLast = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})(?!\d)/;

export const isDate = (typed: string): boolean => yearFirst.test(typed) || yearLast.test(typed);

/** The only order that a date can have; `either` when both would do. Full stops stand in dates with the day first. */
export const orderOf = (typed: string): DayOrder | 'either' | undefined => {
  const [, first, between, second] = yearLast.exec(typed.trim()) ?? [];
  if (first === undefined || between === '.' || first === second) return undefined;
  if (Number(first) > 12) return 'd/m/y';
  return Number(second) > 12 ? 'm/d/y' : 'either';
};

const readDate = (text: string, order: DayOrder): { day: CivilDay; rest: string } | undefined => {
  const found = (year: number, month: string | undefined, day: string | undefined, { length }: string) => ({
    day: { year, month: Number(month), day: Number(day) },
    rest: text.slice(length),
  });
  const iso = yearFirst.exec(text);
  if (iso) return found(Number(iso[1]), iso[3], iso[4], iso[0]);
  const [whole, first, between, second, typedYear = ''] = yearLast.exec(text) ?? [];
  if (whole === undefined) return undefined;
  const year = typedYear.length === 2 ? 2000 + Number(typedYear) : Number(typedYear);
  const dayFirst = between === '.' || order === 'd/m/y';
  return dayFirst ? found(year, second, first, whole) : found(year, first, second, whole);
};

/** Minutes after midnight: `14:30`, `14.30`, `14h30`, `2:30 pm`, `2pm`. */
const readClock = (typed: string): number | undefined => {
  const [, hours, minutes = '0', half] =
    /^(\d{1,2})(?:[:.h](\d{2})(?::\d{2})?)?\s*h?\s*([ap])?\.?m?\.?$/i.exec(typed) ?? [];
  if (hours === undefined || Number(minutes) > 59) return undefined;
  if (half === undefined)
    return Number(hours) > 23 || !/\D/.test(typed) ? undefined : Number(hours) * 60 + Number(minutes);
  if (Number(hours) < 1 || Number(hours) > 12) return undefined;
  return ((Number(hours) % 12) + (/p/i.test(half) ? 12 : 0)) * 60 + Number(minutes);
};

/** When nobody noted the hour. */
const noon = 12 * 60;

export type DayProblem = 'no-date' | 'no-time' | 'ahead';

/** When a line happened. A day without an hour counts as its noon, or as now when its noon is still to come. */
export const readDay = (
  { date, time }: { date: string; time: string },
  { order, zone, now }: { order: DayOrder; zone: string; now: Instant },
): Instant | DayProblem => {
  const whole = time === '' ? readIsoInstant(date, zone) : undefined;
  if (whole !== undefined) return whole > now ? 'ahead' : whole;
  const found = readDate(date, order);
  if (!found || !isCivilDay(found.day) || found.day.year < 1970) return 'no-date';
  const clock = time === '' ? found.rest.replace(/^[\sT,]+/, '') : time;
  const minutes = clock === '' ? noon : readClock(clock);
  if (minutes === undefined) return 'no-time';
  const at = instantOnDay(found.day, minutes, zone);
  if (at <= now) return at;
  return clock === '' && instantOnDay(found.day, 0, zone) <= now ? now : 'ahead';
};
