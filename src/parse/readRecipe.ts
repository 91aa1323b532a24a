import type { Recipe, RecipeLine } from '../studio/settings/recipe.ts';
import { asciiText } from './readNumeral.ts';
import { readNumber } from './readQuantity.ts';

/** Why a recipe could not be parsed. */
export type RecipeProblem =
  | { kind: 'nothing' }
  /** A part without a name or an amount. */
  | { kind: 'unreadable'; part: string }
  | { kind: 'negative'; part: string }
  | { kind: 'too-much'; part: string }
  | { kind: 'sums-to-zero' }
  | { kind: 'too-long'; most: number };

type Found<T> = { ok: true; value: T } | { ok: false; why: RecipeProblem };

/** A material's name, with its number before or after it. */
export interface Part {
  material: string;
  amount: number;
  percent: boolean;
  addition: boolean;
}

const mostLines = 40;
const mostAmount = 1e6;
const longestName = 60;

const number = String.raw`[-−]?\s?(?:\d[\d.,]*|\.\d+)(?:\s\d+\/\d+|\/\d+)?`;
const after = new RegExp(
  String.raw`^(?<name>.*[^\s:=])(?:\s*[:=]\s*|\s+)(?<amount>${number})\s*(?<percent>%)?$`,
  'u',
);
const before = new RegExp(
  String.raw`^(?<amount>${number})\s*(?<percent>%)?\s*(?:parts?\s+(?:of\s+)?)?(?<name>\p{L}.*)$`,
  'u',
);

const readPart = (typed: string): Found<Part> => {
  const part = typed.slice(0, 100);
  const addition = /^(?:\+|(?:plus|add)\s)/i.test(typed);
  const text = typed.replace(/^(?:\+\s*|(?:plus|add)\s+)/i, '').replace(/\s+parts?$/i, '');
  const groups = (after.exec(text) ?? before.exec(text))?.groups;
  const [name = '', amount = ''] = [groups?.['name']?.trim(), groups?.['amount']];
  if (!/\p{L}/u.test(name) || name.length > longestName)
    return { ok: false, why: { kind: 'unreadable', part } };
  const read = readNumber(amount);
  if (!read.ok && read.why.kind === 'negative') return { ok: false, why: { kind: 'negative', part } };
  if (!read.ok) return { ok: false, why: { kind: 'unreadable', part } };
  if (read.value > mostAmount) return { ok: false, why: { kind: 'too-much', part } };
  return {
    ok: true,
    value: { material: name, amount: read.value, percent: groups?.['percent'] !== undefined, addition },
  };
};

/** How the bot writes that the rest of a recipe is additions over the base. */
const overIt = /^over (?:it|the base)(?:\s*:\s*|\s+|$)/i;

/** Parses names with numbers, separated by commas, semicolons or line breaks. */
export const readParts = (typed: string): Found<Part[]> => {
  const texts = asciiText(typed.replaceAll('\n', ';'))
    // A comma within a number is its own.
    .split(/;|,(?!\d)|(?<!\d),/)
    .map((text) => text.trim().replace(/^and\s+/i, ''))
    .filter((text) => text !== '');
  if (texts.length > mostLines) return { ok: false, why: { kind: 'too-long', most: mostLines } };
  const parts: Part[] = [];
  let over = false;
  for (const text of texts) {
    const named = text.replace(overIt, '');
    over ||= named !== text;
    if (named === '') continue;
    const part = readPart(named);
    if (!part.ok) return part;
    parts.push(over ? { ...part.value, addition: true } : part.value);
  }
  return parts.length === 0 ? { ok: false, why: { kind: 'nothing' } } : { ok: true, value: parts };
};

/**
 * Parses a recipe: `feldspar 37, silica 26, whiting 21, kaolin 16, + red iron oxide 3`. A part after a plus is an
 * addition over the base, and so is everything after `over it`. Additions are in the same parts as the base, or in
 * percent of its sum.
 */
export const readRecipe = (typed: string): Found<Recipe> => {
  const parts = readParts(typed);
  if (!parts.ok) return parts;
  const base = parts.value.reduce((sum, { addition, amount }) => sum + (addition ? 0 : amount), 0);
  if (!(base > 0)) return { ok: false, why: { kind: 'sums-to-zero' } };
  const lines: RecipeLine[] = [];
  for (const { material, amount, percent, addition } of parts.value) {
    const inParts = addition && percent ? (amount * base) / 100 : amount;
    const same = lines.find(
      (line) => line.addition === addition && line.material.toLowerCase() === material.toLowerCase(),
    );
    if (same) same.amount += inParts;
    else if (inParts > 0) lines.push({ material, amount: inParts, addition });
  }
  return { ok: true, value: { lines } };
};
