import { normalizedName } from '../../text/normalizedName.ts';
import { readDuration } from '../readQuantity.ts';
import type { PlainText } from './takePlain.ts';

const whenSaid =
  /\b(?:(?:about )?(?:\d+(?:[.,]\d+)?|an?|half an) ?(?:s|sec\w*|m|mins?|minutes?|h|hrs?|hours?|days?) ago|(?:yesterday|last night|last evening|this (?:morning|afternoon|evening)|(?:(?:on|last) )?(?:mon|tue|wednes|thurs|fri|satur|sun)day)(?: (?:at )?\d{1,2}(?:[:.]\d\d)? ?(?:am|pm)?\b(?![.,]\d))?|at \d{1,2}(?:(?::\d\d)? ?(?:am|pm)|:\d\d))(?![\p{L}\d])/iu;

/** When it was, as it was typed. */
export const takeWhen = (text: PlainText): string | undefined =>
  text.take(whenSaid)?.[0].replace(/^at /i, '').trim();

const span = String.raw`(?<span>\d+(?:[.,]\d+)? ?(?:m|mins?|minutes?|h|hrs?|hours?))(?![\p{L}\d])`;
const stir = String.raw`(?:a |the )?(?:stir(?:red|ring)?|mixing)\b`;
const afterStir = [
  new RegExp(String.raw`\bafter ${stir}(?: (?:for|of|it))* ${span}`, 'iu'),
  new RegExp(String.raw`(?<![\d.,])${span} after ${stir}(?: it)?`, 'iu'),
];
/** Longer after a stir, a glaze may have settled (common practice). */
const stillStirred = 45 * 60_000;

/** `after stir 10 min`: a note, and whether it still counts as stirred just before. */
export const takeAfterStir = (text: PlainText): { note: string; just: boolean } | undefined => {
  for (const pattern of afterStir) {
    const found = text.take(pattern);
    if (!found) continue;
    const lasted = readDuration(found.groups?.['span'] ?? '', 'min');
    return { note: found[0].trim(), just: lasted.ok && lasted.value <= stillStirred };
  }
  return undefined;
};

/** As a regular expression reads it. */
export const escaped = (name: string) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** A cup of the studio by its name; a short name only after the word cup. */
export const takeCup = (text: PlainText, names: readonly string[]): string | undefined => {
  for (const name of [...names].sort((a, b) => b.length - a.length)) {
    const said = normalizedName(name)
      .split(' ')
      .map(escaped)
      .join(String.raw`[\s-]+`);
    if (said === '') continue;
    const before = normalizedName(name).length < 3 ? '(?:cup|vessel|beaker|jug) ' : '';
    if (text.take(new RegExp(`(?<![\\p{L}\\d])${before}${said}(?![\\p{L}\\d])`, 'iu'))) return name;
  }
  return undefined;
};

/** A flow cup of a standard, such as `ford 4`. */
export const takeStandardCup = (text: PlainText): string | undefined => {
  const found = text.take(/\b(ford|zahn|iso|din|shell)[\s-]?#?(\d)(?![\p{L}\d.,])/iu);
  return found && `${found[1]}${found[2]}`.toLowerCase();
};

/** `cup A`, when the studio has no such cup. */
export const takeStrangeCup = (text: PlainText): string | undefined =>
  text.take(
    /\b(?:cup|vessel|beaker|jug) (?!of\b)(?:[a-z]|#?\d{1,2})(?![\p{L}\d.,])(?! ?(?:s|sec|g)\b)/iu,
  )?.[0];

const looks: Record<string, string> = {
  watery: 'thin',
  runny: 'thin',
  good: 'right',
  ok: 'right',
  okay: 'right',
  fine: 'right',
};

export const takeLook = (text: PlainText): string | undefined => {
  const said = (text.take(
    /\b(?:looks?|flows?|runs?|feels?) (?:a bit |quite |slightly |rather |just )?(thin|watery|runny|thick|right|good|ok|okay|fine)\b/i,
  ) ?? text.take(/\b(thin|watery|runny|thick)\b/i))?.[1]?.toLowerCase();
  return said === undefined ? undefined : (looks[said] ?? said);
};

const part = String.raw`(?:(?:a |one |two |three |four )?(?:half|thirds?|quarters?|fifths?)|\d+ ?\/ ?\d+|\d+(?:[.,]\d+)? ?(?:%|percent|per cent))`;
const volume = String.raw`\d+(?:[.,]\d+)? ?(?:l|litres?|liters?|gal|gallons?)`;
const levels = [
  new RegExp(
    String.raw`(?<!\p{L})(?:(?:about|nearly|almost|roughly|only) )*(?<level>${part})[ -]full\b`,
    'iu',
  ),
  new RegExp(
    String.raw`\b(?:level|volume)(?: (?:is|was|of|at|now|about))*\s*[:=]?\s*(?<level>${part}|${volume})(?![\p{L}\d])(?: full\b)?`,
    'iu',
  ),
  new RegExp(String.raw`(?<![\d.,])(?<level>${volume}) (?:left|in (?:it|all|the (?:pail|bucket)))\b`, 'iu'),
];

const alone = new RegExp(String.raw`(?<![\p{L}\d.,])(?<level>${part}|${volume})(?![\p{L}\d])`, 'iu');

/** How full the pail is, as it was typed: `two thirds full`, `level 60 %`, `12 l in the pail`. */
export const takeLevel = (text: PlainText): string | undefined => {
  for (const pattern of levels) {
    const level = text.take(pattern)?.groups?.['level'];
    if (level !== undefined) return level;
  }
  // The bucket may stand between: `level of gull grey 60 %`.
  return text.take(/\b(?:level|volume) of\b/i) && text.take(alone)?.groups?.['level'];
};

const sights: readonly (readonly [RegExp, string])[] = [
  [/(?<!\bno )\bclear water(?: on top)?\b/i, 'clear-water'],
  [/(?<!\bno )\b(?:hard )?(?:cake|pan)\b(?! (?:is )?gone)(?: (?:at|on|in) the bottom\b)?/i, 'cake'],
  [/(?<!\bno )\blump(?:s|y)\b/i, 'lumps'],
  [/(?<!\bno )\bskin\b/i, 'skin'],
  [/(?<!\bno )\b(?:froze|frozen(?: solid| through)?|iced over|ice(?![ -]?(?:cold|water|cubes?)))\b/i, 'ice'],
];

export const takeSights = (text: PlainText): string | undefined => {
  const seen = sights.flatMap(([words, value]) => (text.take(words) ? [value] : []));
  return seen.length > 0 ? seen.join(', ') : undefined;
};
