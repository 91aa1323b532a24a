import { addDays } from '../time/civilDay.ts';
import { everyone, type Instant } from '../ids.ts';
import { isoDay, weekdays } from '../time/openingHours.ts';
import { weekdayOf } from '../time/civilDay.ts';
import { keepersOf } from '../settings/keepersOf.ts';
import { outsideQuiet } from '../time/quietHours.ts';
import type { Studio } from '../settings/studio.ts';
import { instantOnDay, startOfDay, wallOf } from '../time/wallTime.ts';
import type { WantedReminder } from './reminder.ts';

/** Planned so far ahead, in case the program is off for a while. */
const daysAhead = 8;

/** The round on the mornings of today and the next days when the studio is open: to each keeper, or once to everybody. */
export const morningReminders = (studio: Studio, now: Instant): WantedReminder[] => {
  const { morning, hours, reminders, zone } = studio;
  if (!morning) return [];
  const today = wallOf(now, zone);
  const days = Array.from({ length: daysAhead + 1 }, (_, ahead) => addDays(today, ahead)).filter(
    (day) => hours.week[weekdays[weekdayOf(day)]] !== 'closed' && !hours.closures.includes(isoDay(day)),
  );
  const whom = morning.by === 'channel' ? [everyone] : keepersOf(studio);
  return days
    .map((day) => ({
      day: isoDay(day),
      dueAt: outsideQuiet(instantOnDay(day, morning.at, zone), reminders.quiet, zone, 'after'),
      // The next day has a round of its own.
      goodUntil: startOfDay(addDays(day, 1), zone),
    }))
    .filter(({ dueAt, goodUntil }) => dueAt < goodUntil)
    .flatMap(({ day, ...when }) =>
      whom.map((member) => ({
        key: `morning-${day}`,
        member,
        about: { kind: 'morning' as const, day, by: morning.by },
        ...when,
      })),
    );
};
