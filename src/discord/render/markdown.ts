import type { Part, Text } from '../../words/text/text.ts';

/**
 * A member's words on one line, without characters that affect the text around them: control characters, direction
 * marks, stacked accents.
 */
export const oneLine = (said: string): string =>
  said
    .replace(/[\p{Cs}]/gu, '\ufffd')
    .replace(/[\u061c\u200b\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g, '')
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, ' ')
    .replace(/(\p{M}{3})\p{M}+/gu, '$1')
    .trim();

/** A member's words with markdown escaped, so that they show as typed and cannot mention, link or format. */
export const escaped = (said: string): string => (isPlain(said) ? said : escapedMarks(said));

/** Words of letters and digits, as most names are, have nothing to escape. */
const isPlain = (said: string): boolean => /^[A-Za-z][A-Za-z0-9]*(?: [A-Za-z0-9]+)*$/.test(said);

const escapedMarks = (said: string): string =>
  oneLine(said)
    .replace(/[\\*_~`|<>[\]]/g, '\\$&')
    .replace(/^(?:[#+-]|\d+(?=[.)]))/, (mark) => (/\d/.test(mark) ? `${mark}\\` : `\\${mark}`))
    // Markdown has no escape for these. A zero-width space inside prevents their parsing.
    .replace(/@/g, '@\u200b')
    .replace(/:\/\//g, ':\u200b//');

const STAMPS = { ago: 'R', clock: 'f', day: 'D' } as const;

const marked = (part: Part | string): string => {
  if (typeof part === 'string') return part;
  if ('said' in part) return escaped(part.said);
  if ('at' in part) return `<t:${Math.floor(part.at / 1000)}:${STAMPS[part.show]}>`;
  return escaped(part.name);
};

/** A day followed by its time of day is merged into one timestamp, which shows both. */
const momentsOnce = (text: Text): Text =>
  text.filter((_, i) => !isDayWithClock(text, i) && !isDayWithClock(text, i - 1));

const isDayWithClock = (text: Text, i: number): boolean => {
  const [day, clock] = [text[i], text[i + 2]];
  return (
    text[i + 1] === ' ' &&
    typeof day === 'object' &&
    'at' in day &&
    day.show === 'day' &&
    typeof clock === 'object' &&
    'at' in clock &&
    clock.show === 'clock' &&
    clock.at === day.at
  );
};

/** Text as markdown: a member's words escaped, instants as timestamps that each phone shows in its own zone. */
export const markdown = (text: Text): string => momentsOnce(text).map(marked).join('');

/** Splits text into words with their spaces, each short enough to place. */
const shortWords = (words: string): string[] => words.match(/\S{1,200}\s*|\s+/gu) ?? [];

/** Markdown split into pieces of at most that length, between words. */
export const markdownPieces = (text: Text, most: number): string[] => {
  const whole = markdown(text);
  if (whole.length <= most) return [whole];
  const pieces: string[] = [];
  let piece: Text = [];
  const parts = momentsOnce(text).flatMap((part): Text => {
    if (typeof part === 'string') return shortWords(part);
    return 'said' in part ? shortWords(part.said).map((one) => ({ said: one })) : [part];
  });
  for (const part of parts) {
    if (piece.length > 0 && pieceOf([...piece, part]).length > most) {
      pieces.push(pieceOf(piece));
      piece = [];
    }
    piece.push(part);
  }
  return [...pieces, pieceOf(piece)];
};

/** Adjacent words of a member are escaped together: a mark needs an escape only at the start of a line. */
const pieceOf = (parts: Text): string => {
  const joined: Text = [];
  for (const part of parts) {
    const last = joined.at(-1);
    if (typeof part === 'object' && 'said' in part && typeof last === 'object' && 'said' in last)
      joined[joined.length - 1] = { said: last.said + part.said };
    else joined.push(part);
  }
  return joined.map(marked).join('');
};

/** Markdown cut to that length, with an ellipsis. */
export const markdownWithin = (text: Text, most: number): string => {
  const whole = markdown(text);
  if (whole.length <= most) return whole;
  let room = most - 1;
  let cut = '';
  for (const part of momentsOnce(text)) {
    const next = marked(part);
    if (next.length <= room) {
      cut += next;
      room -= next.length;
      continue;
    }
    if (typeof part === 'string') cut += part.slice(0, room);
    if (typeof part === 'object' && 'said' in part) cut += escapedWithin(part.said, room);
    break;
  }
  return `${cut.replace(/[\ud800-\udbff]$/, '')}…`;
};

const escapedWithin = (said: string, room: number): string => {
  let letters = [...oneLine(said)].slice(0, room);
  // Words are cut before they are escaped, so that no escape is split.
  while (escaped(letters.join('')).length > room) letters = letters.slice(0, -1);
  return escaped(letters.join(''));
};

/** Text for places without markdown, such as a button's label. Times are in UTC, since no zone is known here. */
export const plainMarkdown = (text: Text, most: number): string => {
  const whole = text
    .map((part) => {
      if (typeof part === 'string') return part;
      if ('said' in part) return oneLine(part.said);
      return 'at' in part ? `${UTC.format(part.at)} UTC` : oneLine(part.name);
    })
    .join('');
  return clipped(whole, most);
};

const UTC = new Intl.DateTimeFormat('en-CA', {
  dateStyle: 'short',
  timeStyle: 'short',
  hourCycle: 'h23',
  timeZone: 'UTC',
});

export const clipped = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, most - 1).replace(/[\ud800-\udbff]$/, '')}…`;
