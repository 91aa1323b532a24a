import { days, instant, later, type Instant } from '../ids.ts';
import { keepersOf } from '../settings/keepersOf.ts';
import { outsideQuiet } from '../time/quietHours.ts';
import type { WantedReminder } from './reminder.ts';
import { sessionsAfter, type SessionHeld } from '../time/session.ts';
import type { Studio } from '../settings/studio.ts';

/** A weekly session is planned again when the one before it has had its reminder. */
const horizon = days(8);

const coming = (studio: Studio, now: Instant): SessionHeld[] => {
  const held: SessionHeld[] = [];
  for (const session of sessionsAfter(now, studio.sessions, studio.hours, studio.zone)) {
    // After a long holiday too there is always one to come.
    if (held.length >= 2 && session.from > later(now, horizon)) break;
    held.push(session);
  }
  return held;
};

/** Each keeper's reminders of the sessions to come: to see to the buckets before. */
export const sessionReminders = (studio: Studio, now: Instant): WantedReminder[] => {
  const { reminders, zone } = studio;
  return coming(studio, now).flatMap(({ name, date, from, until }) =>
    keepersOf(studio).map((member) => ({
      key: `buckets-${date}-${name}`,
      member,
      about: { kind: 'buckets' as const, session: name, from },
      dueAt: outsideQuiet(instant(from - reminders.lead), reminders.quiet, zone, 'before'),
      goodUntil: until,
    })),
  );
};
