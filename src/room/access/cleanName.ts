import { isIdLike } from '../../studio/isIdLike.ts';

const scripts = ['Latin', 'Cyrillic', 'Greek', 'Arabic', 'Hebrew', 'Han', 'Hangul', 'Devanagari', 'Thai'];
const inScript = (script: string) => new RegExp(`\\p{Script=${script}}`, 'u');

/** A name as it is shown: no invisible or direction marks, single spaces. Undefined if it is no valid name. */
export const cleanName = (typed: string): string | undefined => {
  const name = typed.normalize('NFKC').replace(/\s+/gu, ' ').trim();
  if (!/^[\p{L}\p{M}\p{N} .'’-]{1,40}$/u.test(name) || !/\p{L}/u.test(name)) return undefined;
  if (isIdLike(name)) return undefined;
  // A name that mixes two scripts is probably imitating another name.
  return scripts.filter((script) => inScript(script).test(name)).length > 1 ? undefined : name;
};
