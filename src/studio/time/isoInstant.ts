import { isCivilDay } from './civilDay.ts';
import { instant, minutes, type Instant } from '../ids.ts';
import { dateAt, instantOf } from './wallTime.ts';

const ISO = new RegExp(
  String.raw`^(?<year>\d{4})-(?<month>\d{2})-(?<day>\d{2})[t ](?<hour>\d{2}):(?<minute>\d{2})` +
    String.raw`(?::(?<second>\d{2})(?:\.(?<fraction>\d{1,9}))?)?` +
    String.raw`(?: ?(?<utc>z)| ?(?<sign>[+-])(?<offsetHours>\d{2}):?(?<offsetMinutes>\d{2}))?$`,
  'i',
);

/** An instant as ISO 8601 in UTC, for scripts. */
export const isoInstant = (at: Instant): string => dateAt(at).toISOString();

/**
 * The instant in an ISO 8601 text such as `2026-03-08T02:30:00Z`. A local time counts in the zone; without a zone the
 * text must say its offset. Undefined for any other text.
 */
export const readIsoInstant = (text: string, zone?: string): Instant | undefined => {
  const groups = ISO.exec(text)?.groups;
  if (!groups) return undefined;
  const figure = (name: string): number => Number(groups[name] ?? 0);
  const [hour, minute, second] = [figure('hour'), figure('minute'), figure('second')];
  const [offsetHours, offsetMinutes] = [figure('offsetHours'), figure('offsetMinutes')];
  const wall = { year: figure('year'), month: figure('month'), day: figure('day'), hour, minute };
  if (!isCivilDay(wall) || hour > 23 || minute > 59 || second > 59) return undefined;
  if (offsetHours > 23 || offsetMinutes > 59) return undefined;
  const withinMinute = second * 1000 + Number((groups['fraction'] ?? '').padEnd(3, '0').slice(0, 3));
  if (groups['utc'] === undefined && groups['sign'] === undefined)
    return zone === undefined ? undefined : instant(instantOf(wall, zone) + withinMinute);
  const offset = minutes(offsetHours * 60 + offsetMinutes);
  return instant(instantOf(wall, 'UTC') + withinMinute - (groups['sign'] === '-' ? -offset : offset));
};
