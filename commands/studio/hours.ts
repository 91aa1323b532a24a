import { logs, optional, refusal } from '../../src/contract/contract.ts';
import { calendarDays, dayHours } from '../../src/contract/kinds/hours.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import {
  nextOpenInstant,
  weekdays,
  type OpeningHours,
  type WeekdayName,
} from '../../src/studio/time/openingHours.ts';
import type { StudioEvent } from '../../src/studio/settings/studio.ts';
import type { Words } from '../../src/words/words.ts';

const mostDaysOff = 400;

const ofDay = (day: WeekdayName) => optional(dayHours, (w: Words) => w.schedule.day(day));

const withDaysOff = (before: readonly string[], off: string[] = [], on: string[] = []) =>
  [...new Set([...before, ...off])].filter((day) => !on.includes(day));

export const setHours = logs({
  name: 'hours',
  about: (w) => w.schedule.hoursAbout,
  who: 'keeper',
  options: {
    daily: optional(dayHours, (w) => w.schedule.daily),
    monday: ofDay('monday'),
    tuesday: ofDay('tuesday'),
    wednesday: ofDay('wednesday'),
    thursday: ofDay('thursday'),
    friday: ofDay('friday'),
    saturday: ofDay('saturday'),
    sunday: ofDay('sunday'),
    closed: optional(calendarDays, (w) => w.schedule.closed),
    open: optional(calendarDays, (w) => w.schedule.open),
  },
  async run(v, { words, book, now, member }) {
    const { schedule: w } = words;
    const week: Extract<StudioEvent, { kind: 'hours' }>['week'] = {};
    for (const day of weekdays) {
      const hours = v[day] ?? v.daily;
      if (hours !== undefined) week[day] = hours;
    }
    const { hours: before, zone } = await book.studio();
    const after: OpeningHours = {
      week: { ...before.week, ...week },
      closures: withDaysOff(before.closures, v.closed, v.open),
    };
    const events: StudioEvent[] = [
      ...(Object.keys(week).length > 0 ? [{ kind: 'hours' as const, week }] : []),
      ...(v.closed ? [{ kind: 'closures' as const, days: v.closed, closed: true }] : []),
      ...(v.open ? [{ kind: 'closures' as const, days: v.open, closed: false }] : []),
    ];
    if (events.length === 0) return refusal(w.nothing('monday:08:00-22:00'));
    if (after.closures.length > mostDaysOff) return refusal(w.tooManyDays(mostDaysOff));
    if (nextOpenInstant(now, after, zone) === 'never') return refusal(w.neverOpen);
    const entries: string[] = [];
    for (const event of events)
      entries.push((await book.logStudio(event, stampNow({ now, member }))).entry.id);
    const { hours } = await book.studio();
    return {
      kind: 'answer',
      title: w.hoursSet(hours),
      facts: [{ label: [w.factClosures], text: w.closures(hours.closures) }],
      data: {
        entry: entries.at(-1),
        entries,
        week: Object.fromEntries(
          Object.entries(hours.week).map(([day, open]) => [day, open === 'closed' ? open : { ...open }]),
        ),
        closures: [...hours.closures],
      },
    };
  },
});
