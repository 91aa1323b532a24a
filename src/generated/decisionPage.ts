import { plainText } from '../contract/plainText.ts';
import { grid, type Move } from '../studio/verdict/decisionTable.ts';
import { margin } from '../studio/belief/priors.ts';
import { usualSure } from '../studio/settings/studio.ts';
import {
  mostReadings,
  read,
  sureBeforeDose,
  sureToChange,
  rightUndosed,
} from '../studio/verdict/chooseByChance.ts';
import { whyWeigh } from '../studio/verdict/whyWeigh.ts';
import { instant } from '../studio/ids.ts';
import { rules, type Rule } from '../studio/verdict/rules.ts';
import type { FlowBand, GravityBand } from '../studio/verdict/verdict.ts';
import { decisionWords as w } from '../words/verdict/decisionWords.ts';
import { verdictWords } from '../words/verdict/verdictWords.ts';

const flows: FlowBand[] = ['thin', 'in', 'thick', 'unknown'];
const gravities: GravityBand[] = ['low', 'in', 'high'];

const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
const table = (head: readonly string[], rows: readonly string[][]) =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');

/** A rule's "do not" texts contain no times, so any time and zone will do. */
const anywhere = { now: instant(0), zone: 'UTC' };
const forbidden = (dont: Move['dont']) => dont.map((one) => plainText(verdictWords.dont(one), anywhere));

const afterwards = (then: Rule['then']): string => {
  if (then === undefined) return '';
  if (then === 'what-follows-a-stir') return w.afterStir;
  return then === 'what-follows-a-sieve' ? w.afterSieve : w.step[then];
};

const ruleRow = ({ name, step, then, dont }: Rule, i: number): string[] => [
  String(i + 1),
  w.rule[name],
  name === 'cake' ? w.cake : w.step[step],
  afterwards(then),
  forbidden(dont).join(' '),
];

/** In the grid gravity is known, so that a measuring step is about the flow. */
const done = ({ when, step }: Move): string => {
  if (step !== 'measure') return w.step[step];
  return when === 'just-mixed' ? w.lookAgain : w.look;
};

const move = (one: Move): string => {
  const { when, hands, amounts, then, dont } = one;
  return [
    `${when === undefined ? '' : `${w.when[when]}: `}**${done(one)}**${hands === 'keeper' ? ` (${w.keeper})` : ''}`,
    ...(amounts.length === 0 ? [] : [amounts.map((amount) => w.amount[amount]).join(', ')]),
    ...(then === undefined ? [] : [`then ${w.step[then]}`]),
    ...forbidden(dont),
  ].join('<br>');
};

/** The rules and the grid of "water or stir?", as a page for keepers. */
export const decisionPage = (): string =>
  [
    w.title,
    w.made,
    w.rules,
    table(w.ruleHead, rules.map(ruleRow)),
    w.chanceTitle,
    ...w.chance({
      sure: 100 * usualSure,
      seen: 100 * read.enough,
      afterFive: 100 * read.afterFive,
      lastly: 100 * read.lastly,
      gravity: 100 * sureToChange.gravity,
      flow: 100 * sureToChange.flow,
      undosed: 100 * rightUndosed,
      beforeDose: 100 * sureBeforeDose,
      readings: mostReadings,
      margin: { gravity: margin.gravity, flow: 100 * margin.flow },
    }),
    [w.whyTitle, ...whyWeigh.map(({ name }) => `- ${w.rule[name]}.`)].join('\n'),
    w.gridTitle,
    w.grid,
    table(
      w.gridHead(flows),
      gravities.map((band) => [
        `**${w.gravity[band]}**`,
        ...flows.map((flow) => grid[band][flow].map(move).join('<br>else ')),
      ]),
    ),
    w.ways,
    w.waysAbout,
    w.amounts,
    w.jar,
    '',
  ]
    .join('\n\n')
    .replace(/\n+$/, '\n');
