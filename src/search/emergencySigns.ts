import type { Emergency } from '../studio/handbook.ts';
import { signsByPart } from './signsByPart.ts';
import { signsOfDanger } from './signsOfDanger.ts';
import { signsOfHarm } from './signsOfHarm.ts';

/**
 * Patterns of what is typed in an emergency, word by word. `a|b` is either word, `~3` up to three other words, `!a` not
 * followed by a, `^` the start, `$` the end; `a + b` both, in any order. `unless` holds patterns that only sound alike.
 * The words are those of emergencyWords,
 * and `named` for a name with a capital that is no word of the trade.
 */
export interface Signs {
  signs: readonly string[];
  unless: readonly string[];
}

export type Danger = 'shock' | 'fire' | 'gas-leak' | 'bleach-gas' | 'alarm' | 'caught' | 'hurt';
export type Harm = Exclude<Emergency, Danger>;

const written: Record<Emergency, Signs> = { ...signsOfDanger, ...signsOfHarm };

export const signsOf = (emergency: Emergency): Signs => {
  const { signs, unless } = written[emergency];
  return { signs: [...signs, ...(signsByPart[emergency] ?? [])], unless };
};

/** Before a sign, these words mean that nobody is hurt yet: somebody plans ahead. */
export const plannedSigns: readonly string[] = [
  'how|way|ways|best ~5 avoid|prevent|protect|keep',
  'so that|nothing',
  'policy|training|poster|procedure',
];

/** Before a sign, these words mean that it is only supposed. */
export const supposedSigns: readonly string[] = [
  'what|happens|ok|bad|dangerous|matter|worse|poisonous|toxic|safe|hurts if',
  'if you|anyone|anybody|a|the',
  'when you|anyone|anybody',
  'in case',
  'what|when ~1 happens',
  'can|could you get|be burned|shock|electrocuted|poisoned|lead|sick|hurts',
  'can|could you die|breathe|drank|swallowed',
];

/** A question with these words is a real emergency, even with the words of supposing. */
export const whatNowSigns: readonly string[] = ['what ~2 asker', 'what|how to', 'help'];

/** A question that starts like this and mentions nobody is about what glaze or dust can do in general. */
export const generalQuestionSigns: readonly string[] = ['^ is|are|can|could|does|do|will|would|how|why|what'];

/** Words of harm that are said of ware and tools: no first aid for a pot. */
export const ofWare: readonly string[] = [
  'fish|bird|birds eye',
  'cut|cuts|nick|chip|chips ~2 in|on|from|of the|a|my ~1 rim|foot|lip|edge|pot|bowl|glaze|clay',
  'cut ~2 tile|tiles|slab|slabs|clay|sponge|template|stencil|resist',
  'burning|burned off|out',
  'pot|pots|clay|glaze|body|kiln ~1 breathe',
  'choke ~3 sieve|mesh|nozzle|screen|gun|brush',
  'in shock ~3 adding|epsom|seeing|price|color|result',
  'fainted to',
];
