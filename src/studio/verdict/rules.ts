import { definedOnly } from '../../definedOnly.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { hours, since } from '../ids.ts';
import { withSmallMoves, type Facts } from './facts.ts';
import { judgesGravity } from './judgedBy.ts';
import { restedTooLong } from './restLearned.ts';
import { restLimitOf } from '../bucket/rests.ts';
import type { Dont, Reason, RuleName, Step } from './verdict.ts';

/** A spray gun clogs on what has dried at the rim since: common practice. */
const sievedForSpraying = hours(24);

/** What may hold of a bucket, and what to do then. */
export interface Rule {
  name: Exclude<RuleName, 'grid'>;
  applies(f: Facts): boolean;
  step: Step;
  then?: Step | 'what-follows-a-stir' | 'what-follows-a-sieve';
  dont: Dont[];
  because(f: Facts): Reason[];
}

export const unbelieved = ({ state }: Facts): Reason[] =>
  state.unbelieved ? [{ because: 'unbelieved', value: state.unbelieved.value, at: state.unbelieved.at }] : [];

export const prediction = ({ predicted }: Facts): Reason[] =>
  predicted ? [{ because: 'predicted', ...predicted }] : [];

const lumpy = ({ state }: Facts): Reason[] =>
  state.unsieved ? [{ because: 'unsieved', ...state.unsieved, mesh: state.settings.mesh }] : [];

/** Whether the last reading was not believed, and differs from the one before it. */
const isDoubted = (state: BucketState): boolean => {
  const { unbelieved, believed } = state;
  if (!unbelieved || !believed) return false;
  const { value, u95 } = withSmallMoves(believed, state);
  return Math.abs(unbelieved.value - value) > Math.hypot(unbelieved.u95, u95);
};

/** What comes before any reading: the first that applies is the verdict. */
export const rules: Rule[] = [
  {
    name: 'retired',
    applies: ({ state }) => state.retired,
    step: 'on-hold',
    dont: ['use', 'adjust'],
    because: () => [{ because: 'retired' }],
  },
  {
    name: 'on-hold',
    applies: ({ state }) => state.hold !== undefined,
    step: 'on-hold',
    then: 'ask-keeper',
    dont: ['use', 'adjust'],
    because: ({ state }) => (state.hold ? [{ because: 'held', hold: state.hold }] : []),
  },
  {
    name: 'cake',
    applies: ({ state }) => state.cake !== undefined,
    step: 'stir',
    then: 'measure',
    dont: ['use', 'water-in', 'water-out'],
    because: (f) => [
      ...(f.state.cake ? [{ because: 'cake' as const, since: f.state.cake.since }] : []),
      ...unbelieved(f),
    ],
  },
  {
    name: 'never-sieved',
    applies: ({ state }) => state.unsieved !== undefined && state.settings.mesh === 'never',
    step: 'ask-keeper',
    then: 'measure',
    dont: ['use'],
    because: lumpy,
  },
  {
    name: 'unsieved',
    applies: ({ state }) => state.unsieved !== undefined,
    step: 'sieve',
    then: 'measure',
    dont: ['use'],
    because: lumpy,
  },
  {
    name: 'never-stirred',
    applies: ({ state }) => state.stir === undefined,
    step: 'stir',
    then: 'what-follows-a-stir',
    dont: ['water-in', 'water-out'],
    because: (f) => [
      { because: 'never-stirred', ...(f.state.voided?.by === 'frozen' && { thawed: true as const }) },
      ...unbelieved(f),
      ...prediction(f),
    ],
  },
  {
    name: 'rested',
    applies: ({ state, now }) =>
      state.stir !== undefined && since(state.stir.at, now) > restLimitOf(state).limit,
    step: 'stir',
    then: 'what-follows-a-stir',
    dont: ['water-in', 'water-out'],
    because: (f) => [...restedTooLong(f.state, f.now), ...unbelieved(f), ...prediction(f)],
  },
  {
    name: 'added-since-stir',
    applies: ({ state }) => !judgesGravity(state.settings) && state.stir?.addedSince === true,
    step: 'stir',
    then: 'what-follows-a-stir',
    dont: ['use'],
    because: () => [{ because: 'added-since-stir' }],
  },
  {
    name: 'spray-unsieved',
    applies: ({ state: { settings, sieved }, now }) =>
      settings.use === 'spraying' &&
      settings.mesh !== 'never' &&
      (sieved === undefined || since(sieved.at, now) > sievedForSpraying),
    step: 'sieve',
    then: 'what-follows-a-sieve',
    dont: ['use'],
    because: ({ state: { sieved } }) => [
      {
        because: 'spray-unsieved',
        limitHours: sievedForSpraying / hours(1),
        ...definedOnly({ at: sieved?.at }),
      },
    ],
  },
  {
    name: 'seconds-unknown',
    applies: ({ state, flow }) => !judgesGravity(state.settings) && flow.band === 'unknown',
    step: 'measure',
    dont: ['water-on-looks'],
    because: ({ flow }) => flow.reasons,
  },
  {
    name: 'seconds-off',
    applies: ({ state, flow }) => !judgesGravity(state.settings) && flow.band !== 'in',
    step: 'ask-keeper',
    dont: ['adjust'],
    because: ({ state: { settings }, flow }) => [
      ...flow.reasons,
      { because: 'own-thickener', use: settings.use },
    ],
  },
  {
    name: 'no-window-needed',
    applies: ({ state }) => !judgesGravity(state.settings),
    step: 'use',
    dont: [],
    because: ({ state: { settings }, reasons }) => [
      ...reasons,
      { because: 'no-window-needed', use: settings.use },
    ],
  },
  {
    name: 'doubted',
    applies: ({ state }) => isDoubted(state),
    step: 'measure',
    dont: ['water-on-looks'],
    because: (f) => [...unbelieved(f), ...prediction(f)],
  },
];
