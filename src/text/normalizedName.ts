// ASCII has no accents, and most names are ASCII.
const isAscii = (text: string): boolean => /^[ -~]*$/.test(text);

/** Text without accents and capitals. */
export const withoutAccents = (text: string): string =>
  (isAscii(text) ? text : text.normalize('NFKD').replace(/\p{M}+/gu, '')).toLowerCase();

/** A name in the form in which names are compared: no accents, no capitals, no punctuation. */
export const normalizedName = (name: string): string =>
  withoutAccents(name)
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** The same without spaces, for names that people type together or apart: `steelcup` is `Steel cup`. */
export const nameKey = (name: string): string => normalizedName(name).replaceAll(' ', '');
