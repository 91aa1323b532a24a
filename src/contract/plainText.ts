import type { Instant } from '../studio/ids.ts';
import { wallOf, type WallTime } from '../studio/time/wallTime.ts';
import { agoText } from '../words/text/agoText.ts';
import type { Part, Text } from '../words/text/text.ts';

export interface Seen {
  now: Instant;
  zone: string;
}

const two = (n: number) => String(n).padStart(2, '0');
const days = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** Sakamoto's rule for the day of the week. */
const weekday = ({ year, month, day }: WallTime): string => {
  const shift = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4][month - 1] ?? 0;
  const y = month < 3 ? year - 1 : year;
  return days[(y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + shift + day) % 7] ?? '';
};

const shown = (part: Exclude<Part, { said: string } | { member: unknown }>, { now, zone }: Seen): string => {
  if (part.show === 'ago') return agoText((now - part.at) / 3_600_000);
  const wall = wallOf(part.at, zone);
  if (part.show === 'clock') return `${two(wall.hour)}:${two(wall.minute)}`;
  const year = wall.year === wallOf(now, zone).year ? '' : ` ${wall.year}`;
  return `${weekday(wall)} ${wall.day} ${months[wall.month - 1] ?? ''}${year}`;
};

/** Nothing that moves the cursor, hides text or turns its direction gets onto a terminal. */
export const visible = (typed: string): string =>
  typed.replace(/[\p{Cc}\u061C\u200B-\u200F\u2028-\u202E\u2060-\u2069\uFEFF]+/gu, ' ');

/** The same for text of several lines. */
export const visibleLines = (text: string): string => text.split('\n').map(visible).join('\n');

/** Text as plain characters, times in the studio's zone. */
export const plainText = (text: Text, seen: Seen): string =>
  text
    .map((part) => {
      if (typeof part === 'string') return part;
      if ('said' in part) return visible(part.said);
      return 'member' in part ? visible(part.name) : shown(part, seen);
    })
    .join('');
