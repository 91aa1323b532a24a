import { editDistance } from '../studio/editDistance.ts';
import { withoutAccents } from '../text/normalizedName.ts';
import { asciiText } from './readNumeral.ts';

/** Words that questions about sums and buckets turn on, each with the forms in which people type it. */
const forms: Record<string, string> = {
  which: 'which whcih wich witch',
  whats: 'whats',
  bucket: 'bucket pail tub',
  buckets: 'buckets pails tubs glazes',
  ready: 'ready redy usable useable',
  water: 'water',
  gravity: 'gravity gravitys',
  baume: 'baume beaume bome baum',
  twaddell: 'twaddell twaddel twaddle',
  epsom: 'epsom epsoms epson',
  solution: 'solution',
  saturated: 'saturated',
  litres: 'litre litres liter liters',
  gallons: 'gallon gallons',
  quarts: 'quart quarts',
  pints: 'pint pints',
  grams: 'gram grams',
  percent: 'percent',
  stirring: 'stirring stirred stir stiring stired stirs mixing',
  longest: 'longest',
  recipe: 'recipe recipes receipe',
  ingredients: 'ingredient ingredients materials',
  contain: 'contain contains containing',
  better: 'better',
  compare: 'compare compared',
  between: 'between',
  difference: 'difference differences',
};

const wordOf = new Map(
  Object.entries(forms).flatMap(([word, all]) => all.split(' ').map((form) => [form, word] as const)),
);

/** Words of their own, one letter away from one above. */
const apart = new Set(
  'what read reads steady letter battery latter matter later wafer bitter butter stirrup strong contact'.split(
    ' ',
  ),
);

const mended = (typed: string): string => {
  const known = wordOf.get(typed);
  if (known !== undefined || typed.length < 4 || apart.has(typed)) return known ?? typed;
  for (const [form, word] of wordOf) {
    const slips = form.length > 7 ? 2 : 1;
    if (form.length < 5 || form.charAt(0) !== typed.charAt(0)) continue;
    if (Math.abs(form.length - typed.length) <= slips && editDistance(form, typed) <= slips) return word;
  }
  return typed;
};

/** A question in small letters, its words of sums and buckets in one spelling, mistyped ones too. */
export const mendWords = (question: string): string =>
  withoutAccents(asciiText(question))
    .replaceAll("'", '')
    .replace(/[a-z]+/g, mended)
    .replace(/\s+/g, ' ')
    .trim();
