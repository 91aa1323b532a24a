import { days, instant, later, type Instant } from '../ids.ts';
import { keepersOf } from '../settings/keepersOf.ts';
import { outsideQuiet } from '../time/quietHours.ts';
import type { WantedReminder } from './reminder.ts';
import { sessionsAfter, type SessionHeld } from '../time/session.ts';
import type { Studio } from '../settings/studio.ts';

/** A week and a day: every weekly session is among them, whatever has become of the one before. */
const horizon = days(8);
/** No session is longer. */
const longest = days(2);

/** The sessions that are on now, and those to come soon; after a long holiday the next two. */
const current = (studio: Studio, now: Instant): SessionHeld[] => {
  const held: SessionHeld[] = [];
  let ahead = 0;
  for (const session of sessionsAfter(instant(now - longest), studio.sessions, studio.hours, studio.zone)) {
    if (ahead >= 2 && session.from > later(now, horizon)) break;
    if (session.from > now) ahead += 1;
    if (session.until > now) held.push(session);
  }
  return held;
};

/** Each keeper's reminders of the sessions now and soon: to see to the buckets before. */
export const sessionReminders = (studio: Studio, now: Instant): WantedReminder[] => {
  const { reminders, zone } = studio;
  return current(studio, now).flatMap(({ name, date, from, until }) =>
    keepersOf(studio).map((member) => ({
      key: `buckets-${date}-${name}`,
      member,
      about: { kind: 'buckets' as const, session: name, from },
      dueAt: outsideQuiet(instant(from - reminders.lead), reminders.quiet, zone, 'before'),
      goodUntil: until,
    })),
  );
};
