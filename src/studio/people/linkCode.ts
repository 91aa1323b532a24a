/** Letters and digits without those that look alike. */
export const linkLetters = '23456789abcdefghjkmnpqrstuvwxyz';
export const linkLength = 8;

/** A code as it is compared, typed with spaces, hyphens or capitals; undefined when it cannot be a code. */
export const readLinkCode = (typed: string): string | undefined => {
  const code = typed
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s-]+/g, '');
  return code.length === linkLength && [...code].every((letter) => linkLetters.includes(letter))
    ? code
    : undefined;
};

/** A code in the form that people read out. */
export const shownLinkCode = (code: string): string => `${code.slice(0, 4)}-${code.slice(4)}`;
