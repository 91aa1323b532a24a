import { addDays, weekdayOf } from './civilDay.ts';
import type { Instant } from '../ids.ts';
import { isoDay, weekdays, type DayHours, type OpeningHours, type WeekdayName } from './openingHours.ts';
import { instantOnDay, wallOf } from './wallTime.ts';

/** An evening of glazing that comes round every week. */
export interface GlazingSession {
  name: string;
  day: WeekdayName;
  hours: DayHours;
}

/** One evening of a session. */
export interface SessionHeld {
  name: string;
  /** The day on the wall on which it begins, as `2026-12-25`. */
  date: string;
  from: Instant;
  until: Instant;
}

/** The sessions that begin after an instant, the earliest first; none on a day that the studio is closed. */
export function* sessionsAfter(
  after: Instant,
  sessions: readonly GlazingSession[],
  { closures }: Pick<OpeningHours, 'closures'>,
  zone: string,
): Generator<SessionHeld> {
  if (sessions.length === 0) return;
  const today = wallOf(after, zone);
  const closed = new Set(closures);
  // Each closure can put off a weekly session by a week.
  const furthest = 7 * (closed.size + 3);
  for (let ahead = 0; ahead <= furthest; ahead++) {
    const day = addDays(today, ahead);
    const date = isoDay(day);
    if (closed.has(date)) continue;
    const held = sessions
      .filter((session) => session.day === weekdays[weekdayOf(day)])
      .map(({ name, hours }) => ({
        name,
        date,
        from: instantOnDay(day, hours.opens, zone),
        until: instantOnDay(day, hours.closes, zone),
      }))
      .filter(({ from }) => from > after)
      .sort((one, other) => one.from - other.from);
    yield* held;
  }
}
