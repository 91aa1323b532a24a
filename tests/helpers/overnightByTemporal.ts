import { Temporal } from '@js-temporal/polyfill';

/** Opening hours as `HH:MM` pairs by Temporal's weekday, Monday first; an end past 24:00 is the next morning. */
export interface Week {
  days: readonly ({ opens: number; closes: number } | null)[];
  closures: readonly string[];
}

const zoned = (at: number, zone: string) =>
  Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone);

/** Every stretch in which a studio is open from the day before an instant until some days after it. */
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

/** The rule for an emulsion told again, on another library: no earlier instant is open, rested and past a night. */
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
