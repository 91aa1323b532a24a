/** A day of the calendar, without a zone; the month is 1 to 12. */
export interface CivilDay {
  year: number;
  month: number;
  day: number;
}

/** Sunday is 0. */
export type Weekday = 0 | 1 | 2 | 3 | 4 | 5 | 6;

const DAYS_IN_400_YEARS = 146_097;
/** From 1 March of the year 0 to 1 January 1970. */
const DAYS_TO_1970 = 719_468;

/**
 * Days from 1970-01-01 to a day of the Gregorian calendar; a month or day beyond the end counts on into the next.
 * @source Hinnant, chrono-Compatible Low-Level Date Algorithms (2013), days_from_civil: years begin on 1 March
 */
export const dayNumber = ({ year, month, day }: CivilDay): number => {
  const months = year * 12 + month - 3;
  const marchYear = Math.floor(months / 12);
  const marchMonth = months - marchYear * 12;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * marchMonth + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * DAYS_IN_400_YEARS + dayOfEra - DAYS_TO_1970;
};

/**
 * The calendar day so many days after 1970-01-01.
 * @source Hinnant, chrono-Compatible Low-Level Date Algorithms (2013), civil_from_days
 */
export const dayNumbered = (number: number): CivilDay => {
  const days = number + DAYS_TO_1970;
  const era = Math.floor(days / DAYS_IN_400_YEARS);
  const dayOfEra = days - era * DAYS_IN_400_YEARS;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1;
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
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
export const weekdayOf = (day: CivilDay): Weekday => {
  const number = (((dayNumber(day) + 4) % 7) + 7) % 7;
  return WEEKDAYS.find((weekday) => weekday === number) ?? 0;
};
