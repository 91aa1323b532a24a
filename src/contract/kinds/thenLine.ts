import { optional, type Option } from '../contract.ts';
import { text } from './texts.ts';

const line = text(3000, '/batch plan recipe:"Gull Grey"');

/**
 * The recipe's line that could not be run before this; the answer offers it again. A button alone sets it, and to no
 * other line: whoever typed one could put it under everybody's thumb.
 */
export const thenOption: Option<string, false> = optional(
  {
    ...line,
    pressed: true,
    read: (typed, asking) =>
      /^\/batch (?:plan|recipe) /.test(typed)
        ? line.read(typed, asking)
        : { ok: false, why: asking.words.desk.thenRecipe },
  },
  (w) => w.desk.then,
);
