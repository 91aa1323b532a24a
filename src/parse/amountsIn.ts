import { gravity, millilitres, type Gravity, type Millilitres } from '../glaze/units.ts';
import type { UnitSystem } from '../studio/settings/studio.ts';
import { readVolume } from './readQuantity.ts';

const unitAfter =
  /^\s*-?\s*(?:%|percent|mm|cm|ml|l|lt|ltrs?|litres|kgs?|g|grams|gal|gals|gallons|qts?|quarts|pts?|pints|lbs?|oz|cups?|h|hrs?|hours?|mins?|minutes|s|secs?|seconds|days?|tsp|tbsp|degrees?|°|baume|be|bé|tw|twaddell)(?![a-z])/;

/** Numbers in prose that can only be gravities: 1.02 to 2.2, and of no unit. */
export const gravitiesIn = (mended: string): { value: Gravity; before: string }[] =>
  [...mended.matchAll(/(?<![\d.,#-])([12][.,]\d{1,3})(?![\d]|[.,]\d)/g)].flatMap(({ 0: digits, index }) => {
    const value = Number(digits.replace(',', '.'));
    const isOther = unitAfter.test(mended.slice(index + digits.length));
    return isOther || value < 1.02 || value > 2.2
      ? []
      : [{ value: gravity(value), before: mended.slice(0, index) }];
  });

const volumeUnits = 'ml|cc|l|lt|ltrs?|litres|gal|gals|gallons|qts?|quarts|pts?|pints|cups?|floz|fl oz';
const volumePattern = new RegExp(
  String.raw`(?<![\w.,/])((?:\d+ )?\d+/\d+|\d+(?:[.,]\d+)?|half an?|an?|one|two|three)\s*-?\s*(${volumeUnits})(?![a-z])`,
);

/** The first volume in prose, such as the “5 gallons” of a question. */
export const volumeIn = (mended: string, units: UnitSystem): Millilitres | undefined => {
  const [, amount = '', unit = ''] = volumePattern.exec(mended) ?? [];
  if (unit === '') return undefined;
  const read = readVolume(`${amount} ${unit}`, units);
  return read.ok && read.value > 0 ? millilitres(read.value) : undefined;
};
