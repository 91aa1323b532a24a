import { couldMove } from '../bucket/fold/couldMove.ts';
import { days, since } from '../ids.ts';
import { widerThanWindow } from './gravityBand.ts';
import { prediction, readFirst, unbelieved, type Rule } from './rules.ts';

/** What a weighing is asked for, when one is wanted: the first that applies is said. */
export const whyWeigh: Rule[] = [
  {
    name: 'never-measured',
    ...readFirst,
    because: (f) => f.state.believed === undefined && [{ because: 'never-measured' }, ...unbelieved(f)],
  },
  {
    name: 'void',
    ...readFirst,
    because: (f) =>
      f.state.voided && [{ because: 'void', ...f.state.voided }, ...unbelieved(f), ...prediction(f)],
  },
  {
    name: 'stale',
    ...readFirst,
    because: (f) => {
      const { believed, settings } = f.state;
      if (!believed || since(believed.at, f.now) <= settings.shelfLife) return undefined;
      return [
        {
          because: 'stale',
          at: believed.at,
          days: since(believed.at, f.now) / days(1),
          limitDays: settings.shelfLife / days(1),
        },
        ...unbelieved(f),
        ...prediction(f),
      ];
    },
  },
  {
    name: 'changed-unknown',
    ...readFirst,
    because: ({ state: { unknownSince } }) =>
      unknownSince.length > 0 && [{ because: 'added-unknown', count: unknownSince.length }],
  },
  {
    name: 'changed',
    ...readFirst,
    because: (f) => {
      const { believed } = f.state;
      const by = couldMove(f.state);
      return believed && by > believed.u95 && [{ because: 'moved', by, u95: believed.u95 }, ...prediction(f)];
    },
  },
  {
    name: 'no-window',
    step: 'ask-keeper',
    dont: ['adjust'],
    because: ({ state }) => state.settings.gravity === undefined && [{ because: 'no-window' }],
  },
  {
    name: 'unsure',
    ...readFirst,
    because: ({ measured, state: { settings } }) =>
      measured?.band === 'in' &&
      settings.gravity &&
      widerThanWindow(measured.u95, settings.gravity) && [
        ...measured.reasons,
        { because: 'unsure', u95: measured.u95, window: settings.gravity },
      ],
  },
];
