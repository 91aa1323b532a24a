import type { HoursProblem } from '../../parse/readOpeningHours.ts';
import type { DayHours, OpeningHours, WeekdayName } from '../../studio/time/openingHours.ts';
import { capital } from '../text/capital.ts';
import { said, t, type Text } from '../text/text.ts';
import { twoDigits } from '../../text/twoDigits.ts';

/** A time of day on the wall clock. */
export const clock = (minutes: number) =>
  `${twoDigits(Math.floor(minutes / 60) % 24)}:${twoDigits(minutes % 60)}`;

export const dayHoursText = (hours: DayHours | 'closed'): string =>
  hours === 'closed'
    ? 'closed'
    : `${clock(hours.opens)}-${hours.closes === 1440 ? '24:00' : clock(hours.closes)}`;

export const weekdayText = (day: WeekdayName): string => capital(day);

const week = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;

/** `Monday to Friday 08:00-22:00, Saturday and Sunday closed`: days alike side by side are told together. */
export const weekText = (hours: OpeningHours['week']): string => {
  const runs: { first: WeekdayName; last: WeekdayName; hours: string }[] = [];
  for (const day of week) {
    const here = dayHoursText(hours[day]);
    const run = runs.at(-1);
    if (run?.hours === here) run.last = day;
    else runs.push({ first: day, last: day, hours: here });
  }
  if (runs.length === 1) return `daily ${runs[0]?.hours ?? ''}`;
  return runs
    .map(({ first, last, hours: open }) =>
      first === last
        ? `${weekdayText(first)} ${open}`
        : `${weekdayText(first)} to ${weekdayText(last)} ${open}`,
    )
    .join(', ');
};

export const hoursProblem = (why: HoursProblem): Text => {
  const typed = said(why.typed);
  switch (why.kind) {
    case 'empty':
      return t`Nothing was typed.`;
    case 'not-hours':
      return t`I can't read “${typed}” as opening hours. They look like 08:00-22:00, or closed.`;
    case 'which-half':
      return t`Is “${typed}” morning or evening? Type 20:00-22:00, or 8pm-10pm.`;
    case 'no-time-between':
      return t`“${typed}” opens and closes at the same time. Type 00:00-24:00 for all day, or closed.`;
    case 'not-a-day':
      return t`“${said(why.day)}” is not a date. Dates look like 2026-12-25.`;
    case 'not-a-stretch':
      return t`“${said(why.stretch)}” ends before it starts, or is longer than a year.`;
  }
};
