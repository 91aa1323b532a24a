import type { Amount, Condition } from '../../studio/verdict/decisionTable.ts';
import type { FlowBand, GravityBand, RuleName, Step } from '../../studio/verdict/verdict.ts';
import { flowWords } from './flowWords.ts';

const rule: Record<Exclude<RuleName, 'grid'>, string> = {
  retired: 'The bucket is retired',
  'on-hold': 'A keeper holds it: contaminated, frozen, a hazard, or another cause',
  cake: 'A hard cake was felt at the bottom, and nobody has said since that it is gone',
  'never-sieved': 'Lumps or a skin were seen, and the glaze is marked never to be sieved',
  unsieved: 'Lumps or a skin were seen, or it froze, since the last sieve',
  'never-stirred': 'No stir is logged',
  rested: 'It was stirred longer ago than it may rest (1 h, or as its keeper set)',
  'never-measured': 'No gravity was measured within 10 minutes of a stir that left no cake',
  void: 'Since the last such gravity a cake was felt, lumps were sieved out, it froze, or something got into it',
  stale: 'The last such gravity is older than it is good for (7 days, or as its keeper set)',
  'changed-unknown': 'Something went in or came out since that cannot be reckoned with',
  changed: 'What went in or came out since can have moved gravity by more than its uncertainty',
  doubted: 'A later reading, of a bucket not stirred just before, says something else',
  'no-window': 'No window of gravity is set',
  unsure: 'Gravity may be inside its window, but its uncertainty is wider than the window',
};

const step: Record<Step, string> = {
  'on-hold': 'leave it alone',
  sieve: 'sieve it',
  stir: 'stir it to the bottom',
  measure: 'measure',
  use: 'use it',
  'add-water': 'add water',
  'draw-off-water': 'draw clear water off after a rest, or stir dry batch in',
  'add-dry': 'stir dry batch in',
  flocculate: 'flocculant, in small doses',
  'stir-on': 'stir on, 2 to 5 minutes, and look again',
  deflocculate: 'deflocculant, drop by drop',
  'ask-keeper': 'ask a keeper',
};

const amount: Record<Amount, string> = {
  water: 'water to mid-window',
  'half-water': 'half of the water to mid-window',
  'draw-off': 'clear water to draw off',
  dry: 'dry batch',
  dose: 'the next dose',
};

const when: Record<Condition, string> = {
  'stirred-short': 'stirred for less than 5 minutes',
  'no-way-to-look': 'marked for gloves, and no window of seconds is set',
  'just-mixed': 'looked at within 5 minutes of the machine mixer',
};

const gravity: Record<GravityBand, string> = { low: 'low', in: 'in', high: 'high' };

/** The decision as a page that a keeper can read. */
export const decisionWords = {
  title: '# Water or stir?',
  made: 'This page is written from the rules that the bot goes by: `npm run readme` writes it anew.',
  rules:
    'The first of these that applies is the answer. A gravity is *low* or *high* only when its whole 95 % interval is outside the window.',
  ruleHead: ['', 'when', 'do now', 'after that', 'and not'],
  gridTitle: '## Otherwise: gravity and flow',
  grid: 'Down, gravity against its window; across, flow against its own. Where a cell has several answers, the first that holds is given. What is marked *keeper* is for a keeper’s hands: a member is told to ask one, with the amounts ready.',
  gridHead: (flow: readonly FlowBand[]): string[] => [
    'gravity \\ flow',
    ...flow.map((one) => flowWords[one]),
  ],
  amounts:
    'Amounts aim at the middle of the window. They are held back until the chance of passing its far edge is at most 5 %, with what is not known of the gravity and of the volume both counted, and they are never more than leaves room to stir. When nobody has said for a week how full the pail is, they are given for each litre.',
  afterStir: 'what follows once it is stirred',
  cake: 'scrape the bottom up and power-mix it',
  look: 'look at the flow',
  lookAgain: 'let the air out, then look at the flow again',
  rule,
  step,
  amount,
  when,
  gravity,
  keeper: '*keeper*',
};
