import type { Instant } from '../studio/ids.ts';
import { wallOf } from '../studio/time/wallTime.ts';
import { agoText } from '../words/text/agoText.ts';
import type { Part, Text } from '../words/text/text.ts';
import { twoDigits } from '../text/twoDigits.ts';
import { weekdayOf } from '../studio/time/civilDay.ts';

export interface Seen {
  now: Instant;
  zone: string;
}

const days = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const timeText = (
  part: Exclude<Part, { said: string } | { member: unknown }>,
  { now, zone }: Seen,
): string => {
  if (part.show === 'ago') return agoText((now - part.at) / 3_600_000);
  const wall = wallOf(part.at, zone);
  if (part.show === 'clock') return `${twoDigits(wall.hour)}:${twoDigits(wall.minute)}`;
  const year = wall.year === wallOf(now, zone).year ? '' : ` ${wall.year}`;
  return `${days[weekdayOf(wall)]} ${wall.day} ${months[wall.month - 1] ?? ''}${year}`;
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
