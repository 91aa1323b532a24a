import type { Part, Text } from '../../words/text/text.ts';

/**
 * A member's words on one line, with everything taken out that could reach beyond it: control characters,
 * marks that turn the reading direction, piles of accents.
 */
export const oneLine = (said: string): string =>
  said
    .replace(/[\p{Cs}]/gu, '\ufffd')
    .replace(/[\u061c\u200b\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g, '')
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, ' ')
    .replace(/(\p{M}{3})\p{M}+/gu, '$1')
    .trim();

/** A member's words, escaped so that they show as typed: they cannot mention, link, or format. */
export const escaped = (said: string): string =>
  oneLine(said)
    .replace(/[\\*_~`|<>[\]]/g, '\\$&')
    .replace(/^(?:[#+-]|\d+(?=[.)]))/, (mark) => (/\d/.test(mark) ? `${mark}\\` : `\\${mark}`))
    // Neither has an escape of its own: an invisible space inside keeps them from being read as more than text.
    .replace(/@/g, '@\u200b')
    .replace(/:\/\//g, ':\u200b//');

const STAMPS = { ago: 'R', clock: 'f', day: 'D' } as const;

const marked = (part: Part | string): string => {
  if (typeof part === 'string') return part;
  if ('said' in part) return escaped(part.said);
  if ('at' in part) return `<t:${Math.floor(part.at / 1000)}:${STAMPS[part.show]}>`;
  return escaped(part.name);
};

/** A day with its time of day is one moment: the stamp of a moment has its day in it. */
const momentsOnce = (text: Text): Text =>
  text.flatMap((part, i) => {
    const isDayOf = (day: Part | string | undefined, clock: Part | string | undefined) =>
      typeof day === 'object' &&
      'at' in day &&
      day.show === 'day' &&
      typeof clock === 'object' &&
      'at' in clock &&
      clock.show === 'clock' &&
      clock.at === day.at;
    if (isDayOf(part, text[i + 2]) && text[i + 1] === ' ') return [];
    return part === ' ' && isDayOf(text[i - 1], text[i + 1]) ? [] : [part];
  });

/** Text for a message: a member's words escaped, instants as stamps that each phone shows in its own zone. */
export const markdown = (text: Text): string => momentsOnce(text).map(marked).join('');

/** Words and their blanks, short enough to be put anywhere. */
const crumbs = (words: string): string[] => words.match(/\S{1,200}\s*|\s+/gu) ?? [];

/** The same as pieces of at most so many characters, cut between words. */
export const markdownPieces = (text: Text, most: number): string[] => {
  if (markdown(text).length <= most) return [markdown(text)];
  const pieces: string[] = [];
  let piece: Text = [];
  const parts = momentsOnce(text).flatMap((part): Text => {
    if (typeof part === 'string') return crumbs(part);
    return 'said' in part ? crumbs(part.said).map((one) => ({ said: one })) : [part];
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

/** Neighbouring words of a member are escaped together: what starts a line is escaped there alone. */
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

/** The same, cut with an ellipsis where it has more characters than fit. */
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
  // Escapes are pairs: what is cut is the words, before they are escaped.
  while (escaped(letters.join('')).length > room) letters = letters.slice(0, -1);
  return escaped(letters.join(''));
};

/** Text where no markup is read, such as a button's label; times are shown in UTC, for want of a zone. */
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
