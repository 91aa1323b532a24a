import type { Instant } from '../studio/ids.ts';
import { wallOf, type WallTime } from '../studio/time/wallTime.ts';
import { agoText } from '../words/text/measures.ts';
import type { Part, Text } from '../words/text/text.ts';

export interface Seen {
  now: Instant;
  zone: string;
}

const twoDigits = (n: number) => String(n).padStart(2, '0');
const days = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** Day of the week, by Sakamoto's algorithm. */
const weekday = ({ year, month, day }: WallTime): string => {
  const shift = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4][month - 1] ?? 0;
  const y = month < 3 ? year - 1 : year;
  return days[(y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + shift + day) % 7] ?? '';
};

const ago = (at: Instant, now: Instant): string => {
  const hours = Math.abs(now - at) / 3_600_000;
  if (hours < 1 / 60) return 'just now';
  return at <= now ? `${agoText(hours)} ago` : `in ${agoText(hours)}`;
};

const timeText = (
  part: Exclude<Part, { said: string } | { member: unknown }>,
  { now, zone }: Seen,
): string => {
  if (part.show === 'ago') return ago(part.at, now);
  const wall = wallOf(part.at, zone);
  if (part.show === 'clock') return `${twoDigits(wall.hour)}:${twoDigits(wall.minute)}`;
  const year = wall.year === wallOf(now, zone).year ? '' : ` ${wall.year}`;
  return `${weekday(wall)} ${wall.day} ${months[wall.month - 1] ?? ''}${year}`;
};

/** Removes characters that move a terminal's cursor, hide text or change its direction. */
export const withoutControls = (typed: string): string =>
  typed.replace(/[\p{Cc}\u061C\u200B-\u200F\u2028-\u202E\u2060-\u2069\uFEFF]+/gu, ' ');

/** The same for text of several lines. */
export const withoutControlsInLines = (text: string): string =>
  text.split('\n').map(withoutControls).join('\n');

/** Text as plain characters, times in the studio's zone. */
export const plainText = (text: Text, seen: Seen): string =>
  text
    .map((part) => {
      if (typeof part === 'string') return part;
      if ('said' in part) return withoutControls(part.said);
      return 'member' in part ? withoutControls(part.name) : timeText(part, seen);
    })
    .join('');
