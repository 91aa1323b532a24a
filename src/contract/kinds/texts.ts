import type { Kind } from '../contract.ts';
import { withoutControls } from '../plainText.ts';

/** Free text, stored as typed, except for NUL and surrounding white space. */
export const text = (most: number, example: string): Kind<string> => ({
  control: 'text',
  prose: true,
  // It checks its own length, to say by how much the text is too long.
  longest: Number.POSITIVE_INFINITY,
  example,
  read(typed, { words }) {
    const value = typed.replaceAll('\0', '').trim();
    if (value === '') return { ok: false, why: words.option.quantity({ kind: 'empty', typed }) };
    const length = [...value].length;
    if (length > most) return { ok: false, why: words.option.tooLong(most, length) };
    return { ok: true, value };
  },
});

/** A name: one line in which nothing hides a letter, turns it round or acts on a terminal. */
export const name = (most: number, example: string): Kind<string> => {
  const plain = text(most, example);
  return {
    ...plain,
    read: (typed, asking) => plain.read(withoutControls(typed).replace(/\s+/gu, ' '), asking),
  };
};

export const note = text(4000, 'smelled a little');
