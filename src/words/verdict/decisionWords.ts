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
  rested: 'It was last stirred longer ago than it may rest (1 h, or as a keeper set)',
  'added-since-stir':
    'For brushing or spraying, with no window of gravity: something went in since the last stir',
  'spray-unsieved': 'For spraying: not sieved in the last 24 h, and not marked never to be sieved',
  'seconds-unknown':
    'For brushing or spraying, with a window of seconds alone: no cup time that counts is logged',
  'seconds-off': 'For brushing or spraying, with a window of seconds alone: the cup time is outside it',
  'no-window-needed': 'For brushing or spraying, with no window of gravity',
  'never-measured': 'No gravity was measured within 10 minutes of a stir that left no cake',
  void: 'Since the last such gravity a cake was felt, lumps were sieved out, it froze, or something got into it',
  stale: 'The last such gravity is too old (older than 7 days, or as a keeper set)',
  'changed-unknown': 'Something went in or came out since, and its amount is not known',
  changed: 'What went in or came out since may have changed gravity by more than its uncertainty',
  doubted: 'A later reading differs, but the bucket was not stirred just before it',
  'no-window': 'No window of gravity is set',
  'weigh-first':
    'It is off, or not likely enough to be right, and it was not weighed in this visit: within the last hour, with nothing poured in since but a dose',
  'stir-again': 'It is sure enough to be right, and was stirred more than 40 minutes ago',
  unsettled: 'Eight readings in one visit did not settle it',
  unsure: 'Gravity may be inside its window, but the reading is less exact than the window is wide',
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
  deflocculate: 'deflocculant, tried in a jar first',
  'ask-keeper': 'ask a keeper',
};

const amount: Record<Amount, string> = {
  water: 'water to mid-window',
  'half-water': 'half of the water to mid-window',
  'draw-off': 'clear water to draw off',
  dry: 'dry batch',
  dose: 'the next dose',
  loosening: 'a drop in a jar of 250 ml, and what that is in the pail',
};

const when: Record<Condition, string> = {
  'stirred-short': 'stirred for less than 5 minutes, and not for 5 in the last 14 days',
  'no-way-to-look': 'marked for gloves, and no window of seconds is set',
  'gels-by-itself': 'its recipe or a keeper says that it holds raw borate',
  'just-mixed': 'looked at within 5 minutes of the machine mixer',
};

const gravity: Record<GravityBand, string> = { low: 'low', in: 'in', high: 'high' };

/** The decision as a page that a keeper can read. */
export const decisionWords = {
  title: '# Water or stir?',
  made: '`npm run readme` writes this page from the bot’s own rules.',
  rules: 'The first of these that applies is the answer.',
  chanceTitle: '## Otherwise: how likely it is to be right',
  /** Chances of 1. */
  chance: (c: {
    sure: number;
    seen: number;
    afterFive: number;
    lastly: number;
    gravity: number;
    flow: number;
    undosed: number;
    beforeDose: number;
    readings: number;
    margin: { gravity: number; flow: number };
  }): string[] => [
    `A reading gets old: water dries off, and somebody may pour something in and not log it. So the bot works out how likely it is that gravity and flow are both right now. Right means inside the window or a little beyond it: ${c.margin.gravity} of gravity, ${c.margin.flow} % of the seconds.`,
    `1. Both are at least ${c.sure} % likely to be right, or as likely as a keeper set (\`/studio set sure:\`): **use it**. If it was weighed and looked at in this visit, ${c.seen} % is enough, and the answer says the chance. After five readings in the visit, ${c.afterFive} % is; after more, ${c.lastly} % for each of the two: at the edge of a window, more readings tell little. That does not hold while the last weighing does not fit those before it. A visit is an hour with nothing poured in; what was weighed before a dose still counts after it.`,
    `2. It was not weighed in this visit: take the quickest reading that may settle it. That is a look or a cup time; if neither would do, weigh it and time the flow cup.`,
    `3. Gravity is at least ${c.gravity} % likely to be outside its window (so its whole 95 % interval is outside): the grid’s row *high* or *low*.`,
    `4. Gravity is at least ${c.beforeDose} % likely to be right, and by a timed cup flow is not: at least ${c.flow} % likely to be outside its window, and at most ${c.undosed} % likely to be right: the grid’s row *in*. If it ran thick before the last stir, it is timed again first. So it is if it ran thick only once, after a dose or within two weeks of an earlier long stir: a cup may clog.`,
    `5. Otherwise what is in doubt is read again; after ${c.readings} readings, a keeper is asked.`,
    'A bucket that was stirred more than 40 minutes ago, with no rest limit of its own, is stirred once more before it is used: a stir lasts about 45 minutes, and the dip takes the last five.',
  ],
  whyTitle:
    'When the bot asks for a weighing, it gives the first of these that applies as the reason. Each changes how likely the bucket is to be right; none decides by itself.',
  ruleHead: ['', 'when', 'do now', 'after that', 'and not'],
  gridTitle: '## What is done then: gravity and flow',
  grid: 'The rows are gravity against its window, the columns flow against its window. Where a cell has several answers, the first that applies is given. Only keepers do what is marked *keeper*: a member is told to ask one, and sees the amounts.',
  gridHead: (flow: readonly FlowBand[]): string[] => [
    'gravity \\ flow',
    ...flow.map((one) => flowWords[one]),
  ],
  amounts:
    'Amounts aim at the middle of the window. They are made smaller until the chance of going past its far edge is at most 5 %; that counts the uncertainty of both gravity and volume. They always leave room to stir. If nobody has said for a week how full the pail is, they are given for each litre, and asked for. They are rounded down to what a hand can measure: water to 100 ml, to 50 below a litre, to 10 below 200 ml, or in cups where the studio measures in cups; powder to the digit of the scale, or in half scoops where a scoop is set (`/studio set scoop:`).',
  jar: 'Deflocculant is tried in a jar first: a drop (20 to the millilitre, common practice) in 250 ml of the glaze, one more if it stays thick, up to three; each drop is 0.2 ml for every litre in the pail. The bot learns from the readings before and after what a drop does here. After two doses that changed nothing, or 0.2 % of the dry weight since the last fresh batch, a keeper looks first. A glaze with raw borate gels by itself: its keeper is asked, and no deflocculant goes in.',
  afterStir: 'what applies once it is stirred',
  afterSieve: 'what applies once it is sieved',
  ways: '## Brushing and spraying',
  waysAbout:
    'Water and flow make the coat of a dip. A brushing or spraying bucket is judged by gravity only when its keeper set a window of gravity, and by a cup only when its keeper set a window of seconds; the finger test is for dipping alone. Where its flow is not judged, the grid’s column *in* applies. It is never given flocculant or deflocculant: its keeper knows its gum. A spraying bucket is sieved within 24 h of its use, and every answer warns of the mist. These are common practice.',
  cake: 'scrape up the bottom and power-mix it',
  look: 'look at the flow',
  lookAgain: 'let the air out, then look at the flow again',
  rule,
  step,
  amount,
  when,
  gravity,
  keeper: '*keeper*',
};
