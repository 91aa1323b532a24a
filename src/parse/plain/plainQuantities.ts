import { editDistance } from '../../studio/editDistance.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import type { Dimension } from '../quantityProblem.ts';
import { isEmptyWord } from './plainVerbs.ts';
import type { PlainText } from './takePlain.ts';
import { unitsNamed } from '../tradeUnits.ts';

/** A number in a line, what it may measure, and how it was typed. */
export interface PlainQuantity {
  is: readonly (Dimension | 'gravity' | 'mesh')[];
  /** As an option reads it: the number with its unit. */
  typed: string;
  number: number;
  /** The word after it, which is no unit that anybody knows. */
  strange?: string;
}

const numeral = String.raw`\d+ \d+\/\d+|\d+\/\d+|\d+(?:[.,]\d+)*|\.\d+`;
const label = String.raw`sg|specific gravity|gravity|density|seconds|secs?|efflux|flow|weight|weighs?|weighed|temp(?:erature)?|mesh|gap`;
const unit = String.raw`°\s?[a-z]*|[a-zé]+(?:\/[a-z]+)?|"|'`;
/** Two units in one: `2 lb 3 oz`, `1 min 5 s`. */
const compound = String.raw`(?<compound>\d+ ?(?:lbs?|pounds?) ?\d+(?:[.,]\d+)? ?(?:oz|ounces?)|\d+ ?m(?:in\w*)? ?\d+(?:[.,]\d+)? ?s(?:ec\w*)?|\d+ ?h(?:rs?|ours?)? ?\d+ ?m(?:in\w*)?)(?![\p{L}\d])`;
const pattern = new RegExp(
  String.raw`(?<![\p{L}\d.,/-])(?:(?<label>${label})(?: (?:is|was|of))?\s*[:=]?\s*)?(?:${compound}|(?<clock>\d{1,2}:[0-5]\d)(?!\d)|(?<number>${numeral})(?<space>\s?)(?<unit>${unit})?(?!\d))`,
  'iu',
);

const labels: readonly (readonly [RegExp, PlainQuantity['is']])[] = [
  [/^(?:sg|specific gravity|gravity|density)$/i, ['gravity']],
  [/^(?:sec|efflux|flow)/i, ['duration']],
  [/^weigh/i, ['mass']],
  [/^temp/i, ['temperature']],
  [/^mesh$/i, ['mesh']],
  [/^gap$/i, ['length']],
];

const hydrometer = /^(?:sg|g\/(?:ml|cc|cm3?)|b(?:[eé]|aum[eé])|tw(?:addell)?)$/i;

/** Units that are long enough to be recognised with one letter wrong. */
const longUnits = 'sec secs second seconds mins minute minutes gram grams litre litres liter liters'.split(
  ' ',
);

/** Words that are one letter from a unit and mean something else. */
const isOtherWord = /^(?:see|seen|set|sea|mine|mind|mint|main|sect)$/i;

/** The unit as it should be spelt; undefined if the word is none. */
const spelt = (word: string, system: UnitSystem): string | undefined => {
  if (hydrometer.test(word) || /^mesh$/i.test(word) || unitsNamed(word, system).length > 0) return word;
  if (word.length < 3 || isOtherWord.test(word)) return undefined;
  return longUnits.find((one) => editDistance(word.toLowerCase(), one) === 1);
};

const measures = (name: string, system: UnitSystem): PlainQuantity['is'] => {
  if (hydrometer.test(name)) return ['gravity'];
  if (/^mesh$/i.test(name)) return ['mesh'];
  return unitsNamed(name, system).map(({ dimension }) => dimension);
};

const value = (digits: string): number => Number(/\//.test(digits) ? NaN : digits.replace(',', '.'));

/** A gravity that needs no unit: 1.46, 1,46 or 1460. No other number of a glaze room lies there. */
const bareGravity = (digits: string): string | undefined => {
  if (/^[12][.,]\d{1,4}$/.test(digits) && value(digits) <= 2.5) return digits;
  return /^(?:1\d|2[0-4])\d\d$/.test(digits) && Number(digits) >= 1010
    ? String(Number(digits) / 1000)
    : undefined;
};

/** Takes the next number out of a line, with its label and its unit. */
const takeQuantity = (text: PlainText, system: UnitSystem): PlainQuantity | undefined => {
  const found = pattern.exec(text.left);
  if (!found?.groups) return undefined;
  const { label: named, compound: both, clock, number: digits = '', space = '', unit: word } = found.groups;
  const end = found.index + found[0].length;
  const labelled = named === undefined ? undefined : labels.find(([one]) => one.test(named))?.[1];
  const whole = both ?? clock;
  if (whole !== undefined) {
    text.cut(found.index, end);
    const is: PlainQuantity['is'] = both
      ? [/lb|pound/i.test(both) ? 'mass' : 'duration']
      : (labelled ?? ['duration']);
    return { is, typed: whole, number: NaN };
  }
  const name = word === undefined ? undefined : spelt(word, system);
  // A word after the number that is no unit belongs to what follows.
  text.cut(found.index, name === undefined ? end - space.length - (word?.length ?? 0) : end);
  const plain = {
    typed: name === undefined ? digits : `${digits} ${name}`,
    number: value(digits),
    ...(name === undefined && word !== undefined && !isEmptyWord(word) && { strange: word }),
  };
  if (name !== undefined) return { ...plain, is: measures(name, system) };
  if (labelled) return { ...plain, is: labelled };
  const gravity = bareGravity(digits);
  return gravity === undefined ? { ...plain, is: [] } : { ...plain, is: ['gravity'], typed: gravity };
};

/** Takes all numbers out of a line, in their order. */
export const takeQuantities = (text: PlainText, units: UnitSystem): PlainQuantity[] => {
  const found: PlainQuantity[] = [];
  for (let next = takeQuantity(text, units); next; next = takeQuantity(text, units)) found.push(next);
  return found;
};
