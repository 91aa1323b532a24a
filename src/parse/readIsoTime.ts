import { isCivilDay } from '../studio/time/civilDay.ts';
import { instant, minutes, type Instant } from '../studio/ids.ts';
import { instantOf } from '../studio/time/wallTime.ts';

const ISO = new RegExp(
  String.raw`^(?<year>\d{4})-(?<month>\d{2})-(?<day>\d{2})[t ](?<hour>\d{2}):(?<minute>\d{2})` +
    String.raw`(?::(?<second>\d{2})(?:\.(?<fraction>\d{1,9}))?)?` +
    String.raw`(?: ?(?<utc>z)| ?(?<sign>[+-])(?<offsetHours>\d{2}):?(?<offsetMinutes>\d{2}))?$`,
  'i',
);

/** An ISO 8601 instant, or an ISO local time in the zone; undefined when the text is neither. */
export const readIsoTime = (text: string, zone: string): Instant | undefined => {
  const groups = ISO.exec(text)?.groups;
  if (!groups) return undefined;
  const figure = (name: string): number => Number(groups[name] ?? 0);
  const [hour, minute, second] = [figure('hour'), figure('minute'), figure('second')];
  const wall = { year: figure('year'), month: figure('month'), day: figure('day'), hour, minute };
  if (!isCivilDay(wall) || hour > 23 || minute > 59 || second > 59) return undefined;
  const withinMinute = second * 1000 + Number((groups['fraction'] ?? '').padEnd(3, '0').slice(0, 3));
  if (groups['utc'] === undefined && groups['sign'] === undefined)
    return instant(instantOf(wall, zone) + withinMinute);
  const offset = minutes(figure('offsetHours') * 60 + figure('offsetMinutes'));
  return instant(instantOf(wall, 'UTC') + withinMinute - (groups['sign'] === '-' ? -offset : offset));
};
