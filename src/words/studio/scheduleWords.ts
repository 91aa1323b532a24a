import { type Instant, hours } from '../../studio/ids.ts';
import type { OpeningHours, WeekdayName } from '../../studio/time/openingHours.ts';
import type { QuietHours } from '../../studio/time/quietHours.ts';
import type { GlazingSession } from '../../studio/time/session.ts';
import type { DryingRule, ReminderRule } from '../../studio/settings/studio.ts';
import { dayHoursText, hoursProblem, weekdayText, weekText } from './hoursWords.ts';
import { percentText, spanText, temperatureText } from '../text/measures.ts';
import { join, said, t, type Text } from '../text/text.ts';

const dayAndTime = (when: Instant): Text => t`${{ at: when, show: 'day' }} ${{ at: when, show: 'clock' }}`;

const quiet = (stretch: QuietHours | undefined): string =>
  stretch === undefined
    ? 'no quiet hours'
    : `quiet ${dayHoursText({ opens: stretch.from, closes: stretch.until })}`;

const fewDays = 6;

export const scheduleWords = {
  problem: hoursProblem,
  hoursAbout: 'Opening hours by weekday, and days off: a coat is ready when somebody can be there',
  day: (day: WeekdayName): string => `Opening hours of ${weekdayText(day)}, or closed`,
  daily: 'Opening hours of every day, unless a weekday says otherwise',
  closed: 'Days off, such as 2026-12-25 or 2026-12-24 to 2027-01-02',
  open: 'Days off after all open',
  sessionAbout: 'A weekly glazing session, for warnings before it; hours:off takes it off',
  sessionDay: 'The weekday',
  sessionHours: 'From when to when, or off',
  sessionName: 'Its name, if a weekday has several',
  dryingAbout: 'How long resist coats dry here, and the air of the room when nobody says',
  dryingHours: 'The least hours that wax and latex dry (12 h)',
  dryingNight:
    'Whether a coat needs a night besides (yes); no where the emulsion is proven to dry in its hours',
  temperature: 'How warm the room usually is',
  humidity: 'Its usual relative humidity in percent',
  remindersAbout: 'How long before a session warnings come, and the hours in which none do',
  lead: 'How long before (30 min)',
  quiet: 'Hours without reminders (22:00-08:00), or none',
  firingAbout: 'Plan the next firing, so that latex is peeled before it',
  firingWhen: 'When the kiln starts',
  firingOff: 'Call the firing off',
  nothing: (example: string): Text => t`Say what to set, such as ${[example]}.`,
  neverOpen: [
    'With that the studio would never open, and no coat would ever be ready. Leave a day open; for days off there is closed:2026-12-25. Nothing was saved.',
  ] as Text,
  tooManyDays: (most: number): Text =>
    t`That would be more than ${most} days off in all. Take past ones out with open:. Nothing was saved.`,
  hoursSet: (hours: OpeningHours): Text => t`Open ${[weekText(hours.week)]}.`,
  factHours: 'Opening hours',
  hours: (hours: OpeningHours): Text => [weekText(hours.week)],
  factClosures: 'Days off',
  closures: (days: readonly string[]): Text => {
    if (days.length === 0) return ['none noted'];
    const more = days.length - fewDays;
    return [days.slice(0, fewDays).join(', ') + (more > 0 ? ` and ${more} more` : '')];
  },
  factSessions: 'Glazing sessions',
  sessions: (sessions: readonly GlazingSession[]): Text =>
    sessions.length === 0
      ? ['none: /studio session day:tuesday hours:18:00-21:00']
      : join(
          sessions.map(
            ({ name, day, hours: held }) => t`${said(name)} (${[weekdayText(day)]} ${[dayHoursText(held)]})`,
          ),
          ', ',
        ),
  sessionSet: ({ name, day, hours: held }: GlazingSession): Text =>
    t`Session ${said(name)}: every ${[weekdayText(day)]} ${[dayHoursText(held)]}.`,
  sessionOff: (name: string): Text => t`Session ${said(name)} is off.`,
  noSession: (day: WeekdayName): Text => t`There is no such session on a ${[weekdayText(day)]}.`,
  tooManySessions: (most: number): Text => t`${most} sessions a week is the most. Nothing was saved.`,
  factDrying: 'Resist coats',
  drying: ({ minimumHours, night, temperature, humidity }: DryingRule): Text => [
    [
      night === false ? `${spanText(minimumHours)}, no night` : `${spanText(minimumHours)} and a night`,
      ...(temperature === undefined ? [] : [temperatureText(temperature, 'metric')]),
      ...(humidity === undefined ? [] : [percentText(humidity * 100)]),
    ].join(', '),
  ],
  dryingSet: (rule: DryingRule): Text =>
    rule.night === false
      ? t`Wax and latex dry at least ${[spanText(rule.minimumHours)]} here, and need no night. Who glazes touches them first.`
      : t`Wax and latex dry at least ${[spanText(rule.minimumHours)]} here, and a night.`,
  factReminders: 'Reminders',
  reminders: ({ lead, quiet: stretch }: ReminderRule): Text => [
    `${spanText(lead / hours(1))} before, ${quiet(stretch)}`,
  ],
  remindersSet: ({ lead, quiet: stretch }: ReminderRule): Text =>
    t`Warnings come ${[spanText(lead / hours(1))]} before; ${[quiet(stretch)]}.`,
  firingSet: (when: Instant): Text => t`Firing planned for ${dayAndTime(when)}.`,
  firingCalledOff: ['No firing is planned now.'] as Text,
};
