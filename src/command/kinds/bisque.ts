import type { Kind } from '../contract.ts';

/** A pyrometric cone, `06` or `^6`: those with a 0 before them count below zero. */
export const cone: Kind<number> = {
  control: 'text',
  example: '06',
  read(typed, { words }) {
    const [, zero, digits = ''] = /^\s*(?:cone|c|\^|△|∆)?\s*(0?)(\d{1,2})\s*$/i.exec(typed) ?? [];
    const value = Number(digits);
    if (digits === '' || value > 42 || (zero === '0' && (value < 1 || value > 22)))
      return { ok: false, why: words.prep.notACone(typed) };
    return { ok: true, value: zero === '0' ? -value : value };
  },
};
