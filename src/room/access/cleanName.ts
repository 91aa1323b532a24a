import { isIdLike } from '../../studio/isIdLike.ts';

const scripts = ['Latin', 'Cyrillic', 'Greek', 'Arabic', 'Hebrew', 'Han', 'Hangul', 'Devanagari', 'Thai'];
const inScript = (script: string) => new RegExp(`\\p{Script=${script}}`, 'u');

/** A name as it is shown: no marks that hide or turn letters, single blanks. Undefined when it cannot be one. */
export const cleanName = (typed: string): string | undefined => {
  const name = typed.normalize('NFKC').replace(/\s+/gu, ' ').trim();
  if (!/^[\p{L}\p{M}\p{N} .'’-]{1,40}$/u.test(name) || !/\p{L}/u.test(name)) return undefined;
  if (isIdLike(name)) return undefined;
  // Letters of two scripts in one name are how one name is made to look like another.
  return scripts.filter((script) => inScript(script).test(name)).length > 1 ? undefined : name;
};
