import { normalizedName } from '../text/normalizedName.ts';

/** Capitals and digits that are drawn like a Latin capital (Unicode Technical Standard 39, confusables). */
// prettier-ignore
const drawnAlike: Record<string, string> = {
  А: 'A', В: 'B', С: 'C', Е: 'E', Н: 'H', І: 'I', Ј: 'J', К: 'K', М: 'M', О: 'O', Р: 'P', Ѕ: 'S', Т: 'T', У: 'Y', Х: 'X',
  Ԁ: 'D', Һ: 'H', Ӏ: 'I', Ԛ: 'Q', Ԝ: 'W', Օ: 'O', Ս: 'U',
  Α: 'A', Β: 'B', Ε: 'E', Ζ: 'Z', Η: 'H', Ι: 'I', Κ: 'K', Μ: 'M', Ν: 'N', Ο: 'O', Ρ: 'P', Τ: 'T', Υ: 'Y', Χ: 'X',
  0: 'O', 1: 'I',
};

/** What two names have in common when they look alike, though their letters are of different alphabets. */
export const nameLook = (name: string): string =>
  [...normalizedName(name).replaceAll(' ', '').toUpperCase()]
    .map((letter) => drawnAlike[letter] ?? letter)
    .join('');
