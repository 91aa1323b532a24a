import { addDays, dayNumber, isCivilDay, type CivilDay } from '../studio/time/civilDay.ts';
import { isoDay, type DayHours } from '../studio/time/openingHours.ts';
import { asciiText } from './readNumeral.ts';

/** Why opening hours or closed days could not be parsed, and what was typed. */
export type HoursProblem = { typed: string } & (
  | { kind: 'empty' }
  | { kind: 'not-hours' }
  /** `8-10pm`: it is unclear whether 8 is in the morning or in the evening. */
  | { kind: 'which-half' }
  /** Opening and closing at the same time. */
  | { kind: 'no-time-between' }
  | { kind: 'not-a-day'; day: string }
  /** A date range that ends before it starts, or is longer than a year. */
  | { kind: 'not-a-stretch'; stretch: string }
);

export type ReadHours<T> = { ok: true; value: T } | { ok: false; why: HoursProblem };

const DAY = 24 * 60;

interface End {
  /** Minutes since midnight; on a 12-hour clock, since midnight or noon. */
  minutes: number;
  half?: 'am' | 'pm';
}

const endOf = (text: string): End | undefined => {
  if (text === 'midnight') return { minutes: DAY, half: 'am' };
  if (text === 'noon' || text === 'midday') return { minutes: 12 * 60, half: 'pm' };
  const match = /^(\d{1,2})(?:[:.h]?(\d{2}))? ?(?:([ap])\.? ?m?\.?)?$/.exec(text);
  if (!match) return undefined;
  const [hour, minute] = [Number(match[1]), Number(match[2] ?? 0)];
  if (minute > 59) return undefined;
  if (match[3] === undefined) return hour * 60 + minute <= DAY ? { minutes: hour * 60 + minute } : undefined;
  if (hour < 1 || hour > 12) return undefined;
  const half = match[3] === 'p' ? 'pm' : 'am';
  return { minutes: (hour % 12) * 60 + minute + (half === 'pm' ? 12 * 60 : 0), half };
};

/** `08:00-22:00`, `8am-10pm`, `noon to midnight`, `closed`; in `18:00-02:00` closing is on the next morning. */
export const readDayHours = (typed: string): ReadHours<DayHours | 'closed'> => {
  const refused = (kind: 'empty' | 'not-hours' | 'which-half' | 'no-time-between') =>
    ({ ok: false, why: { kind, typed } }) as const;
  const text = asciiText(typed).toLowerCase();
  if (text === '') return refused('empty');
  if (/^(?:closed|shut|none|off)$/.test(text)) return { ok: true, value: 'closed' };
  if (/^(?:all day|24 ?h|24 hours)$/.test(text)) return { ok: true, value: { opens: 0, closes: DAY } };
  const [, first, last] = /^(?:from )?(.+?) ?(?:-|\bto\b|\btill\b|\buntil\b) ?(.+)$/.exec(text) ?? [];
  const [start, end] = [endOf(first ?? ''), endOf(last ?? '')];
  if (!start || !end) return refused('not-hours');
  const halves = [start, end].filter(({ half }) => half !== undefined).length;
  if (halves === 1 && [start, end].some(({ half, minutes }) => half === undefined && minutes < 13 * 60))
    return refused('which-half');
  const opens = start.minutes % DAY;
  const closes = end.minutes;
  if (opens === closes % DAY && closes !== DAY) return refused('no-time-between');
  return { ok: true, value: { opens, closes: closes <= opens ? closes + DAY : closes } };
};

const dayOf = (text: string): CivilDay | undefined => {
  const [, year, month, dayOfMonth] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  const day = { year: Number(year), month: Number(month), day: Number(dayOfMonth) };
  return isCivilDay(day) ? day : undefined;
};

/** Parses the days on which the studio is closed: `2026-12-25`, `2026-12-24 to 2027-01-02`, or several with commas. */
export const readClosures = (typed: string): ReadHours<string[]> => {
  const text = asciiText(typed).toLowerCase();
  const items = text.split(/[,;]/).map((item) => item.trim());
  if (text === '') return { ok: false, why: { kind: 'empty', typed } };
  const closures: string[] = [];
  for (const item of items) {
    const ends = item.split(/ ?(?:\.{2,3}|\bto\b|(?<=\d) - (?=\d)) ?/);
    const [first = '', last = first] = ends;
    const [from, until] = [dayOf(first), dayOf(last)];
    if (!from || !until || ends.length > 2)
      return { ok: false, why: { kind: 'not-a-day', day: from ? last : first, typed } };
    const days = dayNumber(until) - dayNumber(from);
    if (days < 0 || days > 366) return { ok: false, why: { kind: 'not-a-stretch', stretch: item, typed } };
    for (let day = 0; day <= days; day++) closures.push(isoDay(addDays(from, day)));
  }
  return { ok: true, value: [...new Set(closures)].sort() };
};
