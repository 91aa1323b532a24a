const scripts = ['Latin', 'Cyrillic', 'Greek', 'Arabic', 'Hebrew', 'Han', 'Hangul', 'Devanagari', 'Thai'];
const inScript = (script: string) => new RegExp(`\\p{Script=${script}}`, 'u');

/** A name as it is shown: no marks that hide or turn letters, single blanks. Undefined when it cannot be one. */
export const cleanName = (typed: string): string | undefined => {
  const name = typed.normalize('NFKC').replace(/\s+/gu, ' ').trim();
  if (!/^[\p{L}\p{M}\p{N} .'’-]{1,40}$/u.test(name) || !/\p{L}/u.test(name)) return undefined;
  // Letters of two scripts in one name are how one name is made to look like another.
  return scripts.filter((script) => inScript(script).test(name)).length > 1 ? undefined : name;
};

/** What two names have in common when people would take them for the same. */
export const nameKey = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');

/** Capitals of other scripts that are drawn like a Latin one (Unicode Technical Standard 39, confusables). */
// prettier-ignore
const drawnAlike: Record<string, string> = {
  А: 'A', В: 'B', С: 'C', Е: 'E', Н: 'H', І: 'I', Ј: 'J', К: 'K', М: 'M', О: 'O', Р: 'P', Ѕ: 'S', Т: 'T', У: 'Y', Х: 'X',
  Α: 'A', Β: 'B', Ε: 'E', Ζ: 'Z', Η: 'H', Ι: 'I', Κ: 'K', Μ: 'M', Ν: 'N', Ο: 'O', Ρ: 'P', Τ: 'T', Υ: 'Y', Χ: 'X',
};

/** What two names have in common when they are drawn alike, though their letters are of different alphabets. */
export const nameLook = (name: string): string =>
  [...nameKey(name).toUpperCase()].map((letter) => drawnAlike[letter] ?? letter).join('');
