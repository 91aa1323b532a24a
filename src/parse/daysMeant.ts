import { parse } from 'chrono-node/en';
import { addDays, isCivilDay, weekdayOf, type CivilDay } from '../studio/time/civilDay.ts';
import { instantOf, dateAt } from '../studio/time/wallTime.ts';

/** The days that a phrase may mean, earliest first; several lists where 3/4 may be day/month or month/day. */
export interface DaysMeant {
  alternatives: readonly (readonly CivilDay[])[];
  /** Counted from now, as in `3 days ago`: the time of day is now's unless another is given. */
  counted: boolean;
}

const NEAR: readonly (readonly [RegExp, number])[] = [
  [/^(?:earlier )?today$/, 0],
  [/^(?:yesterday|yest|yday)$/, -1],
  [/^(?:the )?day before yesterday$/, -2],
  [/^(?:tomorrow|tomorow|tmr|tmrw)$/, 1],
  [/^(?:the )?day after tomorrow$/, 2],
];

const around = (year: number): number[] => [year - 1, year, year + 1];

/** The years that have this day: most lack 29 February. */
const inYears = (years: readonly number[], month: number, day: number): CivilDay[] =>
  years.map((year) => ({ year, month, day })).filter(isCivilDay);

const inFigures = (phrase: string, today: CivilDay): readonly CivilDay[][] => {
  const iso = /^(\d{4})-(\d{2})-(\d{2})$/.exec(phrase);
  if (iso) return [inYears([Number(iso[1])], Number(iso[2]), Number(iso[3]))];
  const match = /^(?:on )?(\d{1,2})[/.](\d{1,2})(?:[/.](\d{4}|\d{2}))?$/.exec(phrase);
  if (!match) return [];
  const [first, second, year] = [Number(match[1]), Number(match[2]), Number(match[3] ?? NaN)];
  const years = Number.isNaN(year) ? around(today.year) : [year < 100 ? 2000 + year : year];
  const dayFirst = inYears(years, second, first);
  return first === second ? [dayFirst] : [dayFirst, inYears(years, first, second)];
};

/** Parses with the library. Its "now" is noon UTC, so that no time zone's clock change moves the day. */
const inWords = (phrase: string, today: CivilDay): readonly CivilDay[][] => {
  const noon = dateAt(instantOf({ ...today, hour: 12, minute: 0 }, 'UTC'));
  const [result, more] = parse(phrase, { instant: noon, timezone: 0 });
  if (!result || more || result.end || result.text !== phrase || result.start.isCertain('hour')) return [];
  const { start } = result;
  const [year, month, day] = [start.get('year'), start.get('month'), start.get('day')];
  const weekday = start.isCertain('weekday') ? start.get('weekday') : null;
  if (year === null || month === null || day === null) return [];
  if (start.isCertain('day')) {
    const days = inYears(start.isCertain('year') ? [year] : around(year), month, day);
    return [days.filter((one) => weekday === null || weekdayOf(one) === weekday)];
  }
  if (weekday === null) return [];
  if (/^(?:last|next|this|past|coming) /.test(phrase)) return [[{ year, month, day }]];
  const since = (weekdayOf(today) - weekday + 7) % 7;
  return [[-since - 7, -since, -since + 7].map((days) => addDays(today, days))];
};

/** The days that a phrase may mean, such as `yesterday`, `tue`, `3 days ago`, `3 July` or `14/7`. */
export const daysMeant = (phrase: string, today: CivilDay): DaysMeant => {
  const near = NEAR.find(([words]) => words.test(phrase));
  if (near) return { alternatives: [[addDays(today, near[1])]], counted: true };
  const figures = inFigures(phrase, today);
  const alternatives = figures.length > 0 ? figures : inWords(phrase, today);
  return {
    alternatives: alternatives.filter((days) => days.length > 0),
    counted: /^in | ago$| from now$/.test(phrase),
  };
};
