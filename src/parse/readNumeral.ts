import { numericQuantity } from 'numeric-quantity';

/** A number, or the two that it may mean when a comma stands before three digits. */
export type Numeral =
  { kind: 'value'; value: number } | { kind: 'ambiguous'; grouped: number; decimal: number };

const TYPOGRAPHY: readonly (readonly [RegExp, string])[] = [
  [/\p{Cf}/gu, ''], // direction marks, zero-width spaces
  [/[″“”„‟〃]/g, '"'],
  [/[′‘’‛´]/g, "'"],
  [/''/g, '"'],
  [/[º˚]/g, '°'],
  [/[‐‑‒–—―−﹣－]/g, '-'],
  [/٫/g, '.'],
  [/[٬،]/g, ','],
];

/** Most input is printable ASCII without spaces and quotes, which needs no conversion. */
const PLAIN_ALREADY = /^[!#-&(-~]+$/;

/** Text in ASCII: digits of any script, curly quotes, primes, dashes and odd spaces replaced, and ½ as 1/2. */
export const asciiText = (typed: string): string =>
  PLAIN_ALREADY.test(typed)
    ? typed
    : TYPOGRAPHY.reduce((text, [odd, plain]) => text.replace(odd, plain), typed)
        .replace(/[\u2070\u00b9\u00b2\u00b3\u2074-\u2079\u2080-\u2089]/g, (digit) => `^${digit}`) // or 5² would read 52
        .replace(/[\u00bc-\u00be\u2150-\u215f]/g, ' $&') // or 1½ would read 11/2
        .normalize('NFKC')
        .replaceAll('\u2044', '/')
        .replace(/\p{Nd}/gu, (digit) => String(numericQuantity(digit)))
        .replace(/\s+/g, ' ')
        .trim();

const GROUPED = String.raw`\d{1,3}(?: \d{3})+(?!\d)(?:[.,]\d+)?`;
const PLAIN = String.raw`\d(?:[\d.,]*\d)?|\.\d+`;

/** Matches a number at the start of ASCII text: `1 1/2`, `1-1/2`, `3/4`, `1 500`, `1,234.5`, `2e-3`. */
export const numeralPattern = String.raw`(?:\d+[ -])?\d+ ?\/ ?\d+|(?:${GROUPED}|${PLAIN})(?:[eE][+-]?\d+)?`;

const WHOLE = new RegExp(`^(?:${numeralPattern})$`);

const value = (digits: string): Numeral | undefined => {
  const number = /^\d+(?:\.\d+)?$/.test(digits) ? Number(digits) : numericQuantity(digits, { round: false });
  return Number.isFinite(number) ? { kind: 'value', value: number } : undefined;
};

/**
 * Parses a number that `numeralPattern` matched. A full stop is the decimal sign, unless there are several that group
 * thousands. A single comma before three digits (`1,500`) is ambiguous; any other single comma is the decimal sign, as
 * in `1,5` or `0,125`.
 */
export const readNumeral = (text: string): Numeral | undefined => {
  if (!WHOLE.test(text)) return undefined;
  if (text.includes('/')) return value(text.replace('-', ' '));
  const digits = text.replaceAll(' ', '');
  const mantissa = /^[\d.,]+/.exec(digits)?.[0] ?? '';
  if (!mantissa.includes(',')) {
    if (/^\d{1,3}(?:\.\d{3}){2,}$/.test(mantissa)) return value(digits.replaceAll('.', ''));
    return value(digits);
  }
  if (/^[1-9]\d{0,2},\d{3}$/.test(digits))
    return {
      kind: 'ambiguous',
      grouped: Number(digits.replace(',', '')),
      decimal: Number(digits.replace(',', '.')),
    };
  if (/^[1-9]\d{0,2}(?:,\d{3}){2,}(?:\.\d+)?$|^[1-9]\d{0,2},\d{3}\.\d+$/.test(mantissa))
    return value(digits.replaceAll(',', ''));
  if (/^[1-9]\d{0,2}(?:\.\d{3})+,\d+$/.test(mantissa))
    return value(digits.replaceAll('.', '').replace(',', '.'));
  if (/^\d+,\d+$/.test(mantissa)) return value(digits.replace(',', '.'));
  return undefined;
};
