import { toDate } from 'date-fns/toDate';

/** A day of the calendar, without a zone; the month is 1 to 12. */
export interface CivilDay {
  year: number;
  month: number;
  day: number;
}

/** Sunday is 0. */
export type Weekday = 0 | 1 | 2 | 3 | 4 | 5 | 6;

const DAY = 86_400_000;

/** Days from 1970-01-01 to a day of the Gregorian calendar; a month or day beyond the end counts on into the next. */
export const dayNumber = ({ year, month, day }: CivilDay): number =>
  toDate(0).setUTCFullYear(year, month - 1, day) / DAY;

/** The calendar day so many days after 1970-01-01. */
export const dayNumbered = (number: number): CivilDay => {
  const date = toDate(number * DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
};

export const addDays = (day: CivilDay, days: number): CivilDay => dayNumbered(dayNumber(day) + days);

export const isSameDay = (one: CivilDay, other: CivilDay): boolean => dayNumber(one) === dayNumber(other);

/** Whether the calendar has such a day: there is no 30 February. */
export const isCivilDay = (day: CivilDay): boolean => {
  const { year, month, day: dayOfMonth } = dayNumbered(dayNumber(day));
  return year === day.year && month === day.month && dayOfMonth === day.day;
};

const WEEKDAYS = [0, 1, 2, 3, 4, 5, 6] as const satisfies readonly Weekday[];

/** 1970-01-01 was a Thursday. */
export const weekdayOf = (day: CivilDay): Weekday => WEEKDAYS.at((dayNumber(day) + 4) % 7) ?? 0;
