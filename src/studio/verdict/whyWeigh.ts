import { couldMove } from '../bucket/fold/couldMove.ts';
import { days, since } from '../ids.ts';
import { widerThanWindow } from './gravityBand.ts';
import { prediction, unbelieved, type Rule } from './rules.ts';

/** What a weighing is asked for, when one is wanted: the first that applies is said. */
export const whyWeigh: Rule[] = [
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
