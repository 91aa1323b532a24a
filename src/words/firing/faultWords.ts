import type { BucketCondition, DipCondition, PieceCondition } from '../../studio/firing/dipCondition.ts';
import type { Fault } from '../../studio/firing/firedEvent.ts';
import { capital } from '../text/capital.ts';
import { ours, said, t, type Text } from '../text/text.ts';

/** What was found of the pieces: crawled, ran. */
export const did: Record<Fault, string> = {
  crawling: 'crawled',
  running: 'ran',
  pinholing: 'pinholed',
  blistering: 'blistered',
  shivering: 'shivered',
  crazing: 'crazed',
  dunting: 'dunted',
};

const conditions: Record<BucketCondition | PieceCondition, string> = {
  'gravity-over': 'a gravity over the window',
  'gravity-under': 'a gravity under the window',
  unmeasured: 'a bucket that nobody had measured lately',
  'flow-thick': 'a thick flow',
  'flow-thin': 'a thin flow',
  rested: 'no stir within the rest limit',
  cake: 'a settled cake',
  lumps: 'lumps or a skin not sieved out',
  'not-sieved': 'no sieving in 30 days',
  'on-hold': 'a bucket on hold',
  layered: 'a second layer over it',
  'resist-damp': 'a resist that was not dry yet',
  'dust-left': 'dust not wiped off',
  'wetting-left': 'soft bisque not pre-wetted',
  'texture-left': 'texture not brushed first',
  'underglaze-thick': 'thick underglaze',
  carved: 'carving or texture',
  'soft-bisque': 'soft-fired bisque',
  'hard-bisque': 'nearly tight bisque',
};

/** A cone as potters write it: 06, 6. */
export const coneText = (cone: number): string => (cone < 0 ? `0${-cone}` : String(cone));

export const conditionText = (condition: DipCondition): Text => {
  if ('said' in condition) return t`the ${[condition.name]} “${said(condition.said)}”`;
  return 'cone' in condition ? [`cone ${coneText(condition.cone)}`] : [conditions[condition.name]];
};

export interface PairSaid {
  fault: Fault;
  condition: DipCondition;
  rates: { hits: number; of: number; otherHits: number; otherOf: number };
  p: number;
  q?: number;
  bayesFactor: number;
}

const chance = (p: number) => (p < 0.00005 ? 'under 0.0001' : String(Number(p.toPrecision(p < 0.1 ? 1 : 2))));

const counts = ({ hits, of, otherHits, otherOf }: PairSaid['rates']): string =>
  `${hits} of ${of} ${of === 1 ? 'day' : 'days'}, against ${otherHits} of ${otherOf} otherwise`;

const daysText = (n: number): string => (n === 1 ? '1 day' : `${n} days`);

export const faultWords = {
  about: 'Which habits and states of the bucket go with which faults',
  bucket: 'One bucket; without it the whole studio',
  days: 'Only what was dipped in the last so many days',

  tooFew: (days: number, more: number): Text =>
    t`Too few results to say: ${[daysText(days)]} of dipping so far. At least ${more} more, good ones and faulty ones.`,
  wants: (days: number, faulty: number, what: 'faulty' | 'good', more: number): Text =>
    t`Too few results to say: ${[daysText(days)]} of dipping, ${faulty} with a fault. At least ${more} more ${[what === 'faulty' ? 'with a fault' : 'without one']}.`,
  finding: {
    none: (): Text => ['No results from the kiln yet. Members tell them with /fired.'],
    'all-good': (days: number): Text =>
      t`All good: ${[daysText(days)]} of dipping, and no fault. There is nothing to compare.`,
    'all-faulty': (days: number): Text =>
      t`A fault on each of ${[daysText(days)]} of dipping: tell the good ones too, or there is nothing to compare with.`,
    'nothing-varies': (days: number, faulty: number): Text =>
      t`Too little to tell apart: ${[daysText(days)]} of dipping, ${faulty} with a fault, and no condition that came often enough and was missing often enough.`,
    'no-lead': (days: number, faulty: number): Text =>
      t`No habit stands out: ${[daysText(days)]} of dipping, ${faulty} with a fault.`,
  },
  lead: ({ fault, condition, rates, p }: PairSaid): Text =>
    t`${[capital(fault)]} went with ${conditionText(condition)}: ${[counts(rates)]} (p ${[chance(p)]}). That is a lead, not a proof.`,
  leadOfFit: ({ fault, condition, rates, p }: PairSaid): Text =>
    t`${[capital(fault)]} went with ${conditionText(condition)}: ${[counts(rates)]} (p ${[chance(p)]}). But ${[fault]} is a fault of fit: look at glaze, body and firing first.`,
  nearest: ({ fault, condition, rates, p, q = 1 }: PairSaid): Text =>
    t`The nearest: ${[fault]} with ${conditionText(condition)}, ${[counts(rates)]} (p ${[chance(p)]}); of so many pairs, chance makes one like it (q ${[chance(q)]}).`,

  rowLabel: ({ fault, condition }: PairSaid): Text => t`${[capital(fault)]} · ${conditionText(condition)}`,
  row: ({ rates, p, q = 1, bayesFactor }: PairSaid): Text => [
    `${counts(rates)} (p ${chance(p)}, q ${chance(q)}, Bayes factor ${Number(bayesFactor.toPrecision(2))})`,
  ],
  counted: ours(
    'Counted are days of dipping at a bucket, not pots: what is dipped on one evening comes out alike for reasons that it shares. What the logbook does not know of a dip is left out.',
  ),
  searched: (pairs: number): Text =>
    t`${[pairs === 1 ? '1 pair' : `${pairs} pairs`]} could have shown something. q is the share of false leads among all that are as striking (Benjamini and Hochberg); p is by Fisher’s exact test.`,
  together: ours(
    'Conditions that came on the same days can’t be told apart by counts: try one change at a time.',
  ),
  fit: ours('Crazing, shivering and dunting are faults of fit between glaze and body, or of cooling.'),
  lately: (row: Text): Text => t`Lately: ${row}`,
};
