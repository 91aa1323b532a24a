import { readLevel, type Level } from '../../parse/readLevel.ts';
import type { Kind } from '../contract.ts';

const example = 'two thirds';

/** How full a pail is: “two thirds”, “60 %”, “12 l”, “7 cm down”. */
export const level: Kind<Level> = {
  control: 'text',
  example,
  async read(typed, { words, book }) {
    const found = readLevel(typed, (await book.studio()).units);
    return found.ok ? found : { ok: false, why: words.option.quantity(found.why, example) };
  },
};
