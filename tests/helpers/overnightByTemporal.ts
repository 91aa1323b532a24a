import { Temporal } from '@js-temporal/polyfill';

/** Opening hours as `HH:MM` pairs by weekday, Monday first. An end past 24:00 is on the next morning. */
export interface Week {
  days: readonly ({ opens: number; closes: number } | null)[];
  closures: readonly string[];
}

const zoned = (at: number, zone: string) =>
  Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone);

/** The opening periods from the day before an instant to some days after it. */
function* stretches(
  at: number,
  week: Week,
  zone: string,
  days: number,
): Generator<{ from: number; until: number }> {
  const first = zoned(at, zone).toPlainDate().subtract({ days: 1 });
  for (let n = 0; n < days; n++) {
    const date = first.add({ days: n });
    const hours = week.days[date.dayOfWeek - 1];
    if (!hours || week.closures.includes(date.toString())) continue;
    const wall = (minutes: number) =>
      date.toPlainDateTime().add({ minutes }).toZonedDateTime(zone, { disambiguation: 'compatible' });
    const opens = wall(hours.opens);
    if (!opens.toPlainDate().equals(date)) continue; // a day that the zone skips
    yield { from: opens.epochMilliseconds, until: wall(hours.closes).epochMilliseconds };
  }
}

export const openAt = (at: number, week: Week, zone: string): boolean =>
  [...stretches(at, week, zone, 2)].some(({ from, until }) => from <= at && at < until);

/**
 * A second implementation of the rule for an emulsion, on another library: the earliest instant that is open, rested
 * and after a night.
 */
export const readyByTemporal = (
  { onAt, zone, week, dryHours }: { onAt: number; zone: string; week: Week; dryHours: number },
  days: number,
): number | undefined => {
  const on = zoned(onAt, zone);
  let morning = on.with({ hour: 5, minute: 0, second: 0, millisecond: 0 });
  if (Temporal.ZonedDateTime.compare(morning, on) <= 0)
    morning = on.toPlainDate().add({ days: 1 }).toZonedDateTime({ timeZone: zone, plainTime: '05:00' });
  const earliest = Math.max(onAt + Math.ceil(dryHours * 3_600_000), morning.epochMilliseconds);
  for (const { from, until } of stretches(earliest, week, zone, days))
    if (until > Math.max(from, earliest)) return Math.max(from, earliest);
  return undefined;
};
