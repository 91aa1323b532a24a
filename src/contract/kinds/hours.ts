import { weekdays, type DayHours, type WeekdayName } from '../../studio/time/openingHours.ts';
import type { QuietHours } from '../../studio/time/quietHours.ts';
import type { Asking, Kind, Read } from '../contract.ts';
import { readClosures, readDayHours, type ReadHours } from '../../parse/readOpeningHours.ts';
import { takeClock } from '../../parse/takeClock.ts';
import { pick } from './picks.ts';

const read =
  <T>(reader: (typed: string) => ReadHours<T>) =>
  (typed: string, { words }: Asking): Read<T> => {
    const found = reader(typed);
    return found.ok ? found : { ok: false, why: words.schedule.problem(found.why) };
  };

/** When a day opens and closes, `08:00-22:00`, or `closed`. */
export const dayHours: Kind<DayHours | 'closed'> = {
  control: 'text',
  example: '08:00-22:00',
  read: read(readDayHours),
};

/** Calendar days: `2026-12-25`, `2026-12-24 to 2027-01-02`. */
export const calendarDays: Kind<string[]> = {
  control: 'text',
  longest: 2_000,
  example: '2026-12-25',
  read: read(readClosures),
};

/** The hours of each night in which nobody is reminded, or `none`. */
export const quietHours: Kind<QuietHours | 'none'> = {
  control: 'text',
  example: '22:00-08:00',
  read(typed, { words: { schedule: w } }) {
    const found = readDayHours(typed);
    if (!found.ok) return { ok: false, why: w.problem(found.why) };
    if (found.value === 'closed') return { ok: true, value: 'none' };
    const { opens: from, closes: until } = found.value;
    return until - from < 24 * 60
      ? { ok: true, value: { from, until } }
      : { ok: false, why: w.quietAllDay(typed) };
  },
};

/** A time of day in minutes after midnight, or `off`. */
export const clockOrOff: Kind<number | 'off'> = {
  control: 'text',
  example: '07:30',
  besides: [{ name: 'off', value: 'off' }],
  read(typed, { words }) {
    const said = typed.trim().toLowerCase();
    if (/^(?:off|none|never|no)$/.test(said)) return { ok: true, value: 'off' };
    // At 7 is in the morning: the earlier of the two comes first.
    const taken = takeClock(said);
    const [minutes] = taken?.rest === '' ? (taken.clock ?? []) : [];
    return minutes === undefined || minutes >= 24 * 60
      ? { ok: false, why: words.schedule.notAClock(typed) }
      : { ok: true, value: minutes };
  },
};

const short = (day: WeekdayName): [string, WeekdayName][] => [
  [day.slice(0, 3), day],
  [`${day}s`, day],
];

export const weekday = pick(weekdays, {
  ...Object.fromEntries(weekdays.flatMap(short)),
  tues: 'tuesday',
  weds: 'wednesday',
  thur: 'thursday',
  thurs: 'thursday',
});
