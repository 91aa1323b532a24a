import { definedOnly } from '../../definedOnly.ts';
import type { BucketState, MeasuredGravity } from '../bucket/bucketState.ts';
import { couldMove } from '../bucket/couldMove.ts';
import { flowBand } from './flowBand.ts';
import { gravityBand, widerThanWindow } from './gravityBand.ts';
import { days, hours, minutes, since, type Instant } from '../ids.ts';
import { judgesGravity } from './judgedBy.ts';
import { predictedNow } from '../bucket/predictedNow.ts';
import { restedTooLong } from './restLearned.ts';
import { restLimitOf } from '../bucket/rests.ts';
import type { Dont, GravityBand, Reason, RuleName, Step } from './verdict.ts';

/** What the rules look at, worked out once. */
export interface Facts {
  state: BucketState;
  now: Instant;
  hoursSinceStir?: number;
  predicted?: { value: MeasuredGravity['value']; u95: number };
  measured?: MeasuredGravity & { band: GravityBand; edge: boolean; reasons: Reason[] };
  /** The reading behind the measured gravity, or one of those of a session taken together. */
  read?: MeasuredGravity;
  flow: ReturnType<typeof flowBand>;
  /** Reasons that belong to every answer from the grid. */
  reasons: Reason[];
}

/** A spray gun clogs on what has dried at the rim since: common practice. */
const sievedForSpraying = hours(24);

/** Clocks may differ by this much. */
const clockDifference = minutes(2);

/** Whether the last reading was not believed, and differs from the one before it. */
const isDoubted = ({ unbelieved, believed, ...state }: BucketState): boolean => {
  if (!unbelieved || !believed) return false;
  const { value, u95 } = withSmallMoves(believed, state);
  return Math.abs(unbelieved.value - value) > Math.hypot(unbelieved.u95, u95);
};

/**
 * The believed gravity with small additions since: they ask for no new reading, so the logbook's prediction is used.
 */
const withSmallMoves = (
  believed: MeasuredGravity,
  { moved, predicted }: Pick<BucketState, 'moved' | 'predicted'>,
): MeasuredGravity =>
  moved > 0 && predicted
    ? { ...believed, value: predicted.value, u95: Math.max(believed.u95, predicted.u95) }
    : believed;

export const facts = (state: BucketState, now: Instant): Facts => {
  const { believed, stir, settings } = state;
  const predicted = predictedNow(state, now);
  // An entry dated slightly ahead of this clock counts as now.
  const stirred = stir && Math.max(0, since(stir.at, now) / hours(1));
  const window = settings.gravity;
  const once = believed && withSmallMoves(believed, state);
  const wide = once !== undefined && window !== undefined && widerThanWindow(once.u95, window);
  const together = wide && state.moved === 0 ? state.together : undefined;
  const measured = once && together ? { ...once, value: together.value, u95: together.u95 } : once;
  return {
    state,
    now,
    ...definedOnly({ hoursSinceStir: stirred, predicted }),
    ...(measured &&
      window && {
        measured: {
          ...measured,
          ...gravityBand(measured, window),
          reasons: [
            {
              because: 'gravity',
              ...gravityBand(measured, window),
              value: measured.value,
              u95: measured.u95,
              window,
            },
            ...(together ? [{ because: 'together' as const, ...together }] : []),
          ],
        },
      }),
    ...(believed && { read: together && measured ? measured : believed }),
    flow: flowBand(state, now),
    reasons:
      stir && stirred !== undefined
        ? [
            {
              because: 'stirred',
              at: stir.at,
              hours: stirred,
              ...(since(now, stir.at) > clockDifference && { ahead: true as const }),
            },
          ]
        : [],
  };
};

/** A rule that comes before the grid. The first that applies gives the verdict. */
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

const prediction = ({ predicted }: Facts): Reason[] =>
  predicted ? [{ because: 'predicted', ...predicted }] : [];

const lumpy = ({ state }: Facts): Reason[] =>
  state.unsieved ? [{ because: 'unsieved', ...state.unsieved, mesh: state.settings.mesh }] : [];

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
    name: 'never-measured',
    applies: ({ state }) => state.believed === undefined,
    step: 'measure',
    dont: ['water-on-looks'],
    because: (f) => [{ because: 'never-measured' }, ...unbelieved(f)],
  },
  {
    name: 'void',
    applies: ({ state }) => state.voided !== undefined,
    step: 'measure',
    dont: ['water-on-looks'],
    because: (f) => [
      ...(f.state.voided ? [{ because: 'void' as const, ...f.state.voided }] : []),
      ...unbelieved(f),
      ...prediction(f),
    ],
  },
  {
    name: 'stale',
    applies: ({ state, now }) =>
      state.believed !== undefined && since(state.believed.at, now) > state.settings.shelfLife,
    step: 'measure',
    dont: ['water-on-looks'],
    because: (f) => [
      ...(f.state.believed
        ? [
            {
              because: 'stale' as const,
              at: f.state.believed.at,
              days: since(f.state.believed.at, f.now) / days(1),
              limitDays: f.state.settings.shelfLife / days(1),
            },
          ]
        : []),
      ...unbelieved(f),
      ...prediction(f),
    ],
  },
  {
    name: 'changed-unknown',
    applies: ({ state }) => state.unknownSince.length > 0,
    step: 'measure',
    dont: ['water-on-looks'],
    because: ({ state }) => [{ because: 'added-unknown', count: state.unknownSince.length }],
  },
  {
    name: 'changed',
    applies: ({ state }) => state.believed !== undefined && couldMove(state) > state.believed.u95,
    step: 'measure',
    dont: ['water-on-looks'],
    because: (f) => [
      { because: 'moved', by: couldMove(f.state), u95: f.state.believed?.u95 ?? 0 },
      ...prediction(f),
    ],
  },
  {
    name: 'doubted',
    applies: ({ state }) => isDoubted(state),
    step: 'measure',
    dont: ['water-on-looks'],
    because: (f) => [...unbelieved(f), ...prediction(f)],
  },
  {
    name: 'no-window',
    applies: ({ state }) => state.settings.gravity === undefined,
    step: 'ask-keeper',
    dont: ['adjust'],
    because: () => [{ because: 'no-window' }],
  },
  {
    name: 'unsure',
    applies: ({ measured, state }) =>
      measured?.band === 'in' &&
      state.settings.gravity !== undefined &&
      widerThanWindow(measured.u95, state.settings.gravity),
    step: 'measure',
    dont: ['water-on-looks'],
    because: ({ measured, state }) =>
      measured && state.settings.gravity
        ? [...measured.reasons, { because: 'unsure', u95: measured.u95, window: state.settings.gravity }]
        : [],
  },
];
