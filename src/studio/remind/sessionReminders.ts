import { days, instant, later, type Instant } from '../ids.ts';
import { keepersOf } from '../settings/keepersOf.ts';
import { outsideQuiet } from '../time/quietHours.ts';
import type { WantedReminder } from './reminder.ts';
import { sessionsAfter, type SessionHeld } from '../time/session.ts';
import type { Studio } from '../settings/studio.ts';

/** A week and a day, so that every weekly session is included, whatever happened to the one before. */
const horizon = days(8);
/** No session lasts longer. */
const longestSession = days(2);

/** The sessions that are on now and the coming ones; at least the next two, even after a long holiday. */
const upcomingSessions = (studio: Studio, now: Instant): SessionHeld[] => {
  const held: SessionHeld[] = [];
  let ahead = 0;
  const since = instant(now - longestSession);
  for (const session of sessionsAfter(since, studio.sessions, studio.hours, studio.zone)) {
    if (ahead >= 2 && session.from > later(now, horizon)) break;
    if (session.from > now) ahead += 1;
    if (session.until > now) held.push(session);
  }
  return held;
};

/** Each keeper's reminders to prepare the buckets before a session. */
export const sessionReminders = (studio: Studio, now: Instant): WantedReminder[] => {
  const { reminders, zone } = studio;
  return upcomingSessions(studio, now).flatMap(({ name, date, from, until }) =>
    keepersOf(studio).map((member) => ({
      key: `buckets-${date}-${name}`,
      member,
      about: { kind: 'buckets' as const, session: name, from },
      dueAt: outsideQuiet(instant(from - reminders.lead), reminders.quiet, zone, 'before'),
      goodUntil: until,
    })),
  );
};
