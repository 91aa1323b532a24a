import { present } from '../../present.ts';
import { type Instant, hours } from '../../studio/ids.ts';
import type { OpeningHours, WeekdayName } from '../../studio/time/openingHours.ts';
import type { QuietHours } from '../../studio/time/quietHours.ts';
import type { GlazingSession } from '../../studio/time/session.ts';
import type { DryingRule, Morning, ReminderRule, UnitSystem } from '../../studio/settings/studio.ts';
import { clock, dayHoursText, hoursProblem, weekdayText, weekText } from './hoursWords.ts';
import { percentText, spanText, temperatureText } from '../text/measures.ts';
import { join, said, t, type Text } from '../text/text.ts';
import { dayAndTime } from '../text/dayAndTime.ts';

const quiet = (stretch: QuietHours | undefined): string =>
  stretch === undefined
    ? 'no quiet hours'
    : `quiet hours ${dayHoursText({ opens: stretch.from, closes: stretch.until })}`;

const fewDays = 6;

export const scheduleWords = {
  problem: hoursProblem,
  hoursAbout: 'Opening hours by weekday, and days off; a coat counts as ready when the studio is open',
  day: (day: WeekdayName): string => `Opening hours of ${weekdayText(day)}, or closed`,
  daily: 'Opening hours of every day, unless a weekday says otherwise',
  closed: 'Days off, such as 2026-12-25 or 2026-12-24 to 2027-01-02',
  open: 'Days off to cancel',
  sessionAbout: 'A weekly glazing session, to remind members before it; off as its hours removes it',
  sessionDay: 'The weekday',
  sessionHours: 'From when to when, or off',
  sessionName: 'Its name, if a weekday has several',
  dryingAbout: 'How long resist coats dry here, and how warm and humid the room usually is',
  dryingHours: 'How long wax and latex dry at least (usually 12 h)',
  dryingNight: 'Does a coat also need a night? Say no only if yours is known to dry in its hours',
  temperature: 'How warm the room usually is',
  humidity: 'Its usual relative humidity in percent',
  remindersAbout: 'How long before a session reminders come, and the hours when none come',
  lead: 'How long before a session (usually 30 min)',
  quiet: 'Hours without reminders, or none',
  morningAbout:
    'When the round is sent on days when the studio is open, and to whom; off as its time stops it',
  morningAt: 'At what time, such as 07:30, or off',
  morningWay: 'To each keeper directly, or to everybody in the channel (usually direct)',
  notAClock: (typed: string): Text =>
    t`I can't read “${said(typed)}” as a time of day. Times look like 07:30 or 7:30am; off stops it. Nothing was saved.`,
  quietAllDay: (typed: string): Text =>
    t`“${said(typed)}” leaves no time for a reminder. Quiet hours look like 22:00-08:00, or none. Nothing was saved.`,
  morningSet: ({ at, by }: Morning): Text =>
    t`On days when the studio is open, ${[by === 'direct' ? 'each keeper is told' : 'everybody is told in the channel']} at ${[clock(at)]} what there is to do. When nothing is, nobody is told.`,
  morningOff: t`The round is no longer sent in the morning.`,
  morningQuiet: (at: number, until: number): Text =>
    t`${[clock(at)]} is within the quiet hours, so it comes when they end, at ${[clock(until)]}.`,
  morningTooLate: (at: number, until: number): Text =>
    t`At ${[clock(at)]} the quiet hours have begun, and they last until ${[clock(until)]} of the next day. Pick a time outside them, or change them: /studio reminders quiet:22:00-08:00. Nothing was saved.`,
  morningNoChannel: t`On Discord it needs a channel: /studio set channel:#glaze-room.`,
  factMorning: 'Morning',
  morning: (morning: Morning | undefined): Text => [
    morning === undefined
      ? 'the round is not sent'
      : `the round is sent at ${clock(morning.at)}, ${morning.by === 'direct' ? 'to each keeper' : 'in the channel'}`,
  ],
  firingAbout: 'Plan the next firing, so that latex is peeled before it',
  firingWhen: 'When the kiln starts',
  firingOff: 'Cancel the firing',
  nothing: (example: string): Text => t`Say what to set, such as ${[example]}.`,
  neverOpen: t`With those hours the studio would never open, and no coat would ever be ready. Leave one day open; for a day off, use closed:2026-12-25. Nothing was saved.`,
  tooManyDays: (most: number): Text =>
    t`That would make more than ${most} days off. Remove past ones with open:. Nothing was saved.`,
  hoursSet: (hours: OpeningHours): Text => t`Open ${[weekText(hours.week)]}.`,
  factHours: 'Opening hours',
  hours: (hours: OpeningHours): Text => [weekText(hours.week)],
  factClosures: 'Days off',
  closures: (days: readonly string[]): Text => {
    if (days.length === 0) return t`none noted`;
    const more = days.length - fewDays;
    return [days.slice(0, fewDays).join(', ') + (more > 0 ? ` and ${more} more` : '')];
  },
  factSessions: 'Glazing sessions',
  sessions: (sessions: readonly GlazingSession[]): Text =>
    sessions.length === 0
      ? t`none yet; a keeper can add one`
      : join(
          sessions.map(
            ({ name, day, hours: held }) => t`${said(name)} (${[weekdayText(day)]} ${[dayHoursText(held)]})`,
          ),
          ', ',
        ),
  sessionSet: ({ name, day, hours: held }: GlazingSession): Text =>
    t`Session ${said(name)}: every ${[weekdayText(day)]} ${[dayHoursText(held)]}.`,
  sessionOff: (name: string): Text => t`The session ${said(name)} is removed.`,
  noSession: (day: WeekdayName): Text => t`There is no such session on ${[weekdayText(day)]}s.`,
  tooManySessions: (most: number): Text => t`${most} sessions a week is the most. Nothing was saved.`,
  factDrying: 'Resist coats',
  drying: ({ minimumHours, night, temperature, humidity }: DryingRule, units: UnitSystem): Text => [
    present([
      night === false
        ? `${spanText(minimumHours)}, no night needed`
        : `dry after ${spanText(minimumHours)} and one night`,
      temperature !== undefined && temperatureText(temperature, units),
      humidity !== undefined && `${percentText(humidity * 100)} humidity`,
    ]).join(', '),
  ],
  dryingSet: (rule: DryingRule): Text =>
    rule.night === false
      ? t`Wax and latex dry at least ${[spanText(rule.minimumHours)]} here, and need no night. Touch them before you glaze.`
      : t`Wax and latex dry at least ${[spanText(rule.minimumHours)]} here, and one night.`,
  factReminders: 'Reminders',
  reminders: ({ lead, quiet: stretch }: ReminderRule): Text => [
    `${spanText(lead / hours(1))} before a session, ${quiet(stretch)}`,
  ],
  remindersSet: ({ lead, quiet: stretch }: ReminderRule): Text =>
    t`Reminders come ${[spanText(lead / hours(1))]} before a session; ${[quiet(stretch)]}.`,
  firingSet: (when: Instant): Text => t`Firing planned for ${dayAndTime(when)}.`,
  firingCalledOff: t`No firing is planned now.`,
};
