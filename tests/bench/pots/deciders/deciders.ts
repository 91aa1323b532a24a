import type { Decider } from '../people/decider.ts';
import { bot } from './bot.ts';
import { carefulKeeper, carefulSized, frugalKeeper } from './keeper.ts';
import { looksOnly, nobody, scaleOnly } from './simple.ts';

/** Everybody who decides, by the name that the command line takes. */
export const deciders: readonly Decider[] = [
  nobody,
  looksOnly,
  scaleOnly,
  carefulKeeper,
  carefulSized,
  frugalKeeper,
  bot,
];
