import { editDistance } from '../../studio/editDistance.ts';
import type { PlainText } from './takePlain.ts';

export const verbs = {
  stir: /^(?:re)?(?:stir(?:s|red|ring)?|mix(?:ed|ing)?|whisk(?:ed)?|paddled|agitated)$/i,
  sieve: /^(?:re)?(?:sieve[sd]?|sieving|screened|strained|sifted)$/i,
  add: /^(?:add(?:s|ed|ing)?|pour(?:s|ed|ing)?|put|topped|tipped)$/i,
  read: /^(?:reads?|readings?|measured?|measures|weigh(?:s|ed)?)$/i,
} as const;
export type Verb = keyof typeof verbs;

/** Full words that are recognised with a letter wrong. */
const spelling: readonly (readonly [string, Verb])[] = [
  ['stirred', 'stir'],
  ['stirring', 'stir'],
  ['sieved', 'sieve'],
  ['sieve', 'sieve'],
  ['added', 'add'],
  ['poured', 'add'],
  ['reading', 'read'],
  ['weighed', 'read'],
  ['measured', 'read'],
];

export const verbOf = (word: string): Verb | undefined => {
  const said = word.toLowerCase().replace(/[^\p{L}]+/gu, '');
  for (const verb of ['stir', 'sieve', 'add', 'read'] as const) if (verbs[verb].test(said)) return verb;
  if (said.length < 4) return undefined;
  return spelling.find(([one]) => editDistance(said, one) === 1)?.[1];
};

/** Out of the bucket rather than into it: `drew off 300 ml`, `poured 300 ml off`. */
export const takeOut = (text: PlainText, line: string): boolean =>
  text.take(
    /\b(?:(?:drew|drawn|pour(?:ed)?|took|taken|siphoned|syphoned|scooped|ladled|decanted)(?: it)? (?:off|out)|removed|decanted|siphoned|syphoned|scooped|ladled|took|drew)\b/i,
  ) !== undefined || /\b(?:pour(?:ed|ing)?|tipped)\b.{1,60}\b(?:off|out|away)\b/i.test(line);

/** Whether the line denies a stir. */
export const takeUnstirred = (text: PlainText): boolean =>
  text.take(
    /\b(?:un-?|(?:not|never|without|before|no|wasn't|wasnt|isn't|isnt|didn't|didnt|haven't|havent|hasn't|hasnt)(?: (?:yet|been|it|any|a|the))* )stir(?:red|ring|s)?\b(?: yet)?/i,
  ) !== undefined;

/** What went in, by the words for it; the longer ones first, since water glass is no water. */
export const substances: readonly (readonly [RegExp, string])[] = [
  [/\b(?:deflocculant|(?:sodium silicate|water ?glass)(?: solution)?)\b/i, 'deflocculant'],
  [
    /\b(?:flocculant|epsom(?: salts?)?(?: solution)?|magnesium sul(?:f|ph)ate(?: solution)?)\b/i,
    'flocculant',
  ],
  [/\b(?:dry (?:batch|powder|glaze|mix|stuff)|powder|dry)\b/i, 'dry'],
  [/\bwater\b/i, 'water'],
  [/\b(?:wet )?(?:glaze|slurry)\b/i, 'glaze'],
];

/** Words that carry nothing: around a reading they are neither read nor missed. */
const empty = new Set(
  (
    "a an the one of to into in on off it its it's is was are were be at and & with by for my our we i ive i've im me you just now " +
    'then after before from so that this these there has have had got get gives says shows came out up down still about around ' +
    'approx roughly ca bucket pail buckets nr number glaze cup flow viscosity sg gravity specific density weight weighs scale ' +
    'hydrometer sec secs second seconds today again all done well very good please thanks thx ok hi hey hello some more also plus ' +
    'ran run runs time timed takes gap rim down below temp temperature log as reading through mesh left took taken - + = / : ; , . ! ? ( )'
  ).split(' '),
);

export const isEmptyWord = (word: string): boolean =>
  empty.has(word.toLowerCase()) ||
  empty.has(word.toLowerCase().replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, '') || '.');
