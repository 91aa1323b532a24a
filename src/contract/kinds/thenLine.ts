import { optional, type Option } from '../contract.ts';
import { text } from './texts.ts';

const line = text(3000, '/batch plan recipe:"Gull Grey"');

/**
 * The recipe's line that could not be run before this was answered; only a button sets it, and the answer offers it
 * again. No other line is offered: whoever types one could put it under everybody's thumb.
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
