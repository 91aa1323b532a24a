import type { BucketCondition, DipCondition, PieceCondition } from '../../studio/firing/dipCondition.ts';
import type { Fault } from '../../studio/firing/firedEvent.ts';
import { capital } from '../text/capital.ts';
import { someOf } from '../text/someOf.ts';
import { coneText } from '../text/coneText.ts';
import { said, t, type Text } from '../text/text.ts';

/** What was found of the pieces: crawled, ran. */
export const did: Record<Fault, string> = {
  crawling: 'crawled',
  running: 'ran',
  pinholing: 'pinholed',
  blistering: 'blistered',
  shivering: 'shivered',
  crazing: 'crazed',
  dunting: 'dunted',
  'too-thin': 'came out too thin',
  'too-thick': 'came out too thick',
  dull: 'came out dull',
  'off-colour': 'came out off colour',
};

const conditions: Record<BucketCondition | PieceCondition, string> = {
  'gravity-over': 'a gravity above the window',
  'gravity-under': 'a gravity below the window',
  unmeasured: 'a bucket that nobody had measured lately',
  'flow-thick': 'a thick flow',
  'flow-thin': 'a thin flow',
  rested: 'no stir within the rest limit',
  cake: 'a settled cake',
  lumps: 'lumps or a skin that were not sieved out',
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

const daysText = (count: number): string => someOf(count, 'day', 'days');

const counts = ({ hits, of, otherHits, otherOf }: PairSaid['rates']): string =>
  `on ${hits} of ${daysText(of)} with it, on ${otherHits} of ${otherOf} without`;

/** How likely a lead is to be more than chance, in words. */
const moreThanChance = (q: number): string =>
  q <= 0.01
    ? 'very likely more than chance'
    : q <= 0.05
      ? 'likely more than chance'
      : q <= 0.2
        ? 'perhaps more than chance'
        : 'may well be chance';

export const faultWords = {
  about: 'Which habits and bucket states go with which faults',
  bucket: 'Only this bucket, instead of the whole studio',
  days: 'Only what was dipped in this many days',

  tooFew: (days: number, more: number): Text =>
    t`Too few results to say: ${[daysText(days)]} of dipping so far. It takes at least ${more} more, good and faulty ones.`,
  wants: (days: number, faulty: number, what: 'faulty' | 'good', more: number): Text =>
    t`Too few results to say: ${[daysText(days)]} of dipping, ${faulty} with a fault. It takes at least ${more} more ${[what === 'faulty' ? 'with a fault' : 'without one']}.`,
  finding: {
    none: (): Text => t`No results from the kiln are logged yet.`,
    'all-good': (days: number): Text =>
      t`No faults in ${[daysText(days)]} of dipping, so there is nothing to compare.`,
    'all-faulty': (days: number): Text =>
      t`Every one of ${[daysText(days)]} of dipping had a fault. Log the good ones too, or there is nothing to compare with.`,
    'nothing-varies': (days: number, faulty: number): Text =>
      t`Too little to compare: ${[daysText(days)]} of dipping, ${faulty} with a fault. No condition was there on enough days and missing on enough others.`,
    'no-lead': (days: number, faulty: number): Text =>
      t`Nothing stands out: ${[daysText(days)]} of dipping, ${faulty} with a fault.`,
  },
  lead: ({ fault, condition, rates }: PairSaid, ofFit: boolean): Text =>
    t`${[capital(fault)]} went with ${conditionText(condition)}: ${[counts(rates)]}. ${[ofFit ? `But ${fault} is a fault of fit: look at glaze, body and firing first.` : 'That is a lead, not a proof.']}`,
  nearest: ({ fault, condition, rates }: PairSaid): Text =>
    t`The closest: ${[fault]} with ${conditionText(condition)}, ${[counts(rates)]}. With so many pairs compared, one like that comes up by chance.`,

  rowLabel: ({ fault, condition }: PairSaid): Text => t`${[capital(fault)]} · ${conditionText(condition)}`,
  row: ({ rates, q = 1 }: PairSaid): Text => [`${counts(rates)}: ${moreThanChance(q)}`],
  inNumbers: ({ fault, condition, p, q = 1, bayesFactor }: PairSaid): Text =>
    t`${[capital(fault)]} with ${conditionText(condition)}, in numbers: p ${[chance(p)]}, q ${[chance(q)]}, Bayes factor ${[String(Number(bayesFactor.toPrecision(2)))]}.`,
  counted: t`This counts days of dipping at a bucket, not pots, because pots dipped on one evening come out alike. It leaves out what the logbook does not know about a dip.`,
  searched: (pairs: number): Text =>
    t`${[pairs === 1 ? '1 pair was' : `${pairs} pairs were`]} compared. p is how often chance alone would do this (Fisher’s exact test). q is what part of such leads would be false (Benjamini and Hochberg).`,
  together: t`Counts can’t separate conditions that came on the same days. Try one change at a time.`,
  fit: t`Crazing, shivering and dunting are faults of fit between glaze and body, or of cooling.`,
  lately: (row: Text): Text => t`Recent: ${row}`,
};
