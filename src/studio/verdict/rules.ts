import { definedOnly } from '../../definedOnly.ts';
import { coverage95 } from '../../glaze/statistics/normal.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { isFlagged } from '../bucket/withoutFlagged.ts';
import { gravityOf } from '../contents/contents.ts';
import { hours, since } from '../ids.ts';
import { withSmallMoves, type Facts } from './facts.ts';
import { judgesGravity } from './judgedBy.ts';
import { restedTooLong } from './restLearned.ts';
import type { Dont, Reason, RuleName, Step } from './verdict.ts';

/** A spray gun clogs on what has dried at the rim since: common practice. */
const sievedForSpraying = hours(24);

/** What may hold of a bucket, and what to do then. */
export interface Rule {
  name: Exclude<RuleName, 'grid'>;
  step: Step;
  then?: Step | 'what-follows-a-stir' | 'what-follows-a-sieve';
  dont: Dont[];
  /** Its reasons, where it applies; nothing where it does not. */
  because(f: Facts): Reason[] | false | undefined;
}

export interface Applying {
  rule: Rule;
  reasons: Reason[];
}

export const firstApplying = (some: readonly Rule[], f: Facts): Applying | undefined => {
  for (const rule of some) {
    const reasons = rule.because(f);
    if (reasons) return { rule, reasons };
  }
  return undefined;
};

export const unbelieved = ({ state }: Facts): Reason[] =>
  state.unbelieved ? [{ because: 'unbelieved', value: state.unbelieved.value, at: state.unbelieved.at }] : [];

export const prediction = ({ predicted }: Facts): Reason[] =>
  predicted ? [{ because: 'predicted', ...predicted }] : [];

/** What the logbook expected instead of a reading that no second one has settled. */
export const unexpected = ({ state }: Facts): Reason[] => {
  if (!state.unexpected) return [];
  const { value, sd } = gravityOf(state.unexpected.expected, state.settings.solids);
  return [
    { because: 'unexpected', value, u95: coverage95 * sd, ...(!isFlagged(state) && { borneOut: true }) },
  ];
};

const lumpy = ({ state: { unsieved, settings } }: Facts): Reason[] | undefined =>
  unsieved && [{ because: 'unsieved', ...unsieved, mesh: settings.mesh }];

/** Whether the last reading was not believed, and differs from the one before it. */
const isDoubted = (state: BucketState): boolean => {
  const { unbelieved, believed } = state;
  if (!unbelieved || !believed) return false;
  const { value, u95 } = withSmallMoves(believed, state);
  return Math.abs(unbelieved.value - value) > Math.hypot(unbelieved.u95, u95);
};

/** Brushing and spraying buckets without a window of gravity. */
const isJudgedByFlow = ({ state }: Facts): boolean => !judgesGravity(state.settings);

const stirFirst: Pick<Rule, 'step' | 'then'> = { step: 'stir', then: 'what-follows-a-stir' };
export const readFirst: Pick<Rule, 'step' | 'dont'> = { step: 'measure', dont: ['water-on-looks'] };

/** What comes before any reading: the first that applies is the verdict. */
export const rules: Rule[] = [
  {
    name: 'retired',
    step: 'on-hold',
    dont: ['use', 'adjust'],
    because: ({ state }) => state.retired && [{ because: 'retired' }],
  },
  {
    name: 'on-hold',
    step: 'on-hold',
    then: 'ask-keeper',
    dont: ['use', 'adjust'],
    because: ({ state: { hold } }) => hold && [{ because: 'held', hold }],
  },
  {
    name: 'cake',
    step: 'stir',
    then: 'measure',
    dont: ['use', 'water-in', 'water-out'],
    because: (f) => f.state.cake && [{ because: 'cake', since: f.state.cake.since }, ...unbelieved(f)],
  },
  {
    name: 'never-sieved',
    step: 'ask-keeper',
    then: 'measure',
    dont: ['use'],
    because: (f) => f.state.settings.mesh === 'never' && lumpy(f),
  },
  {
    name: 'unsieved',
    step: 'sieve',
    then: 'measure',
    dont: ['use'],
    because: lumpy,
  },
  {
    name: 'never-stirred',
    ...stirFirst,
    dont: ['water-in', 'water-out'],
    because: (f) =>
      f.state.stir === undefined && [
        { because: 'never-stirred', ...(f.state.voided?.by === 'frozen' && { thawed: true }) },
        ...unbelieved(f),
        ...prediction(f),
      ],
  },
  {
    name: 'rested',
    ...stirFirst,
    dont: ['water-in', 'water-out'],
    because: (f) => {
      const rested = restedTooLong(f);
      return rested && [...rested, ...unbelieved(f), ...prediction(f)];
    },
  },
  {
    name: 'added-since-stir',
    ...stirFirst,
    dont: ['use'],
    because: (f) => isJudgedByFlow(f) && f.state.stir?.addedSince && [{ because: 'added-since-stir' }],
  },
  {
    name: 'spray-unsieved',
    step: 'sieve',
    then: 'what-follows-a-sieve',
    dont: ['use'],
    because: ({ state: { settings, sieved }, now }) =>
      settings.use === 'spraying' &&
      settings.mesh !== 'never' &&
      (sieved === undefined || since(sieved.at, now) > sievedForSpraying) && [
        {
          because: 'spray-unsieved',
          limitHours: sievedForSpraying / hours(1),
          ...definedOnly({ at: sieved?.at }),
        },
      ],
  },
  {
    name: 'seconds-unknown',
    ...readFirst,
    because: (f) => isJudgedByFlow(f) && f.flow.band === 'unknown' && f.flow.reasons,
  },
  {
    name: 'seconds-off',
    step: 'ask-keeper',
    dont: ['adjust'],
    because: (f) =>
      isJudgedByFlow(f) &&
      f.flow.band !== 'in' && [...f.flow.reasons, { because: 'own-thickener', use: f.state.settings.use }],
  },
  {
    name: 'no-window-needed',
    step: 'use',
    dont: [],
    because: (f) =>
      isJudgedByFlow(f) && [...f.reasons, { because: 'no-window-needed', use: f.state.settings.use }],
  },
  {
    name: 'doubted',
    ...readFirst,
    because: (f) => isDoubted(f.state) && [...unbelieved(f), ...prediction(f)],
  },
];
