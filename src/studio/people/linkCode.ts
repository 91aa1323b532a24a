/** None that look alike. */
export const linkLetters = '23456789abcdefghjkmnpqrstuvwxyz';
export const linkLength = 8;

/** A code as it is kept and compared: however it was typed, with blanks, hyphens or capitals; undefined when it can be none. */
export const readLinkCode = (typed: string): string | undefined => {
  const code = typed
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s-]+/g, '');
  return code.length === linkLength && [...code].every((letter) => linkLetters.includes(letter))
    ? code
    : undefined;
};

/** A code as people read it out. */
export const shownLinkCode = (code: string): string => `${code.slice(0, 4)}-${code.slice(4)}`;
