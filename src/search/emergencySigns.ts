import type { Emergency } from '../studio/handbook.ts';
import { signsOfDanger } from './signsOfDanger.ts';
import { signsOfHarm } from './signsOfHarm.ts';

/**
 * What is typed in an emergency, word by word: `a|b` is one of them, `~3` up to three others, `!a` not followed by it, `^` the
 * beginning and `$` the end; `a + b` both of them, in any order. `unless`: what only sounds like it. The words are those of emergencyWords.
 */
export interface Signs {
  signs: readonly string[];
  unless: readonly string[];
}

export type Danger = 'shock' | 'fire' | 'gas-leak' | 'bleach-gas' | 'alarm' | 'caught' | 'hurt';
export type Harm = Exclude<Emergency, Danger>;

export const signsOf: Record<Emergency, Signs> = { ...signsOfDanger, ...signsOfHarm };

/** Words before a sign that say that nobody is hurt yet: somebody plans ahead. */
export const planned: readonly string[] = [
  'how|way|ways|best ~5 avoid|prevent|protect|keep',
  'so that|nothing',
  'policy|training|poster|procedure',
];

/** Words before a sign that only suppose it. */
export const supposed: readonly string[] = [
  'what|happens|ok|bad|dangerous|matter|worse|poisonous|toxic|safe|hurts if',
  'if you|anyone|anybody|a|the',
  'when you|anyone|anybody',
  'in case',
  'what|when ~1 happens',
  'can|could you get|be burned|shock|electrocuted|poisoned|lead|sick|hurts',
  'can|could you die|breathe|drank|swallowed',
];

/** Whoever asks this means it, whatever is supposed. */
export const whatNow: readonly string[] = ['what ~2 asker', 'what|how to', 'help'];

/** Questions begun like this, with nobody in them, ask what glaze or dust can do. */
export const asksOfKind: readonly string[] = ['^ is|are|can|could|does|do|will|would|how|why|what'];
