import { describe, expect, it } from 'vitest';
import type { Chances } from '../../../../src/studio/belief/chances.ts';
import type { Visit } from '../../../../src/studio/belief/visit.ts';
import { instant } from '../../../../src/studio/ids.ts';
import {
  askedWhenMeasuring,
  chooseByChance,
  type Sureness,
} from '../../../../src/studio/verdict/chooseByChance.ts';

const at = { sure: 0.95, stirredFor: 3 };
const visit: Visit = { at: instant(0), readings: 1, weighed: false, timed: false };

const bucket = (more: {
  low?: number;
  high?: number;
  thin?: number;
  thick?: number;
  both?: number;
  visit?: Partial<Visit>;
  toMiddle?: number;
  volumeSd?: number;
}): Sureness => {
  const { low = 0, high = 0, thin = 0, thick = 0 } = more;
  const chances: Chances = {
    gravity: { low, in: 1 - low - high, high },
    flow: { thin, in: 1 - thin - thick, thick },
    both: more.both ?? (1 - low - high) * (1 - thin - thick),
  };
  return {
    chances,
    visit: more.visit && { ...visit, ...more.visit },
    flowToMiddle: more.toMiddle ?? 0,
    volumeSd: more.volumeSd ?? 0.05,
  };
};

describe('what a stirred bucket asks for, by chance', () => {
  const measured = { weighed: true, timed: true, look: 'right' as const };

  it.each<[string, Sureness, object]>([
    ['it is sure enough to be right: use', bucket({ low: 0.02, thin: 0.02 }), { step: 'use', asks: [] }],
    [
      'nobody looked in this visit: look first',
      bucket({ low: 0.2 }),
      { step: 'measure', asks: ['look', 'weight', 'seconds'] },
    ],
    [
      'the look was right and no cup was timed: seconds',
      bucket({ low: 0.2, visit: { look: 'right' } }),
      { step: 'measure', asks: ['seconds', 'weight'] },
    ],
    [
      'the look was off: weigh, and time the cup with it',
      bucket({ thin: 0.97, visit: { look: 'thin' } }),
      { step: 'measure', asks: ['weight', 'seconds'] },
    ],
    [
      'it is surely too heavy: water',
      bucket({ high: 0.96, visit: measured }),
      { step: 'add-water', asks: [] },
    ],
    [
      'nobody knows how full it is: the level too',
      bucket({ high: 0.96, visit: measured, volumeSd: 0.3 }),
      { step: 'add-water', asks: ['level'] },
    ],
    [
      'it is surely too light: water off',
      bucket({ low: 0.96, visit: measured }),
      { step: 'draw-off-water', asks: [] },
    ],
    [
      'it is surely too light and thick: powder',
      bucket({ low: 0.96, thick: 0.97, visit: measured }),
      { step: 'add-dry', asks: [] },
    ],
    [
      'gravity is right and it is surely thin: a dose of as many steps as are missing',
      bucket({ thin: 0.97, toMiddle: 0.7, visit: measured }),
      { step: 'flocculate', asks: [], doses: 2 },
    ],
    [
      'ever so thin: three steps at most',
      bucket({ thin: 0.97, toMiddle: 3, visit: measured }),
      { step: 'flocculate', asks: [], doses: 3 },
    ],
    [
      'gravity is in doubt: no dose that would hide water, weigh again',
      bucket({ low: 0.3, thin: 0.97, visit: measured }),
      { step: 'measure', asks: ['seconds', 'weight'] },
    ],
    [
      'it is thin by a look alone: no dose before a cup was timed',
      bucket({ thin: 0.97, visit: { weighed: true, look: 'thin' } }),
      { step: 'measure', asks: ['seconds', 'weight'] },
    ],
    [
      'it is surely thick: stir on first',
      bucket({ thick: 0.97, visit: measured }),
      { step: 'stir-on', asks: [] },
    ],
    [
      'six readings did not tell: the keeper',
      bucket({ low: 0.5, visit: { ...measured, readings: 6 } }),
      { step: 'ask-keeper', asks: [] },
    ],
  ])('when %s', (_, sureness, expected) => {
    expect(chooseByChance(sureness, at)).toEqual(expected);
  });

  it('when it is thick after a long stir: deflocculant', () => {
    const thick = bucket({ thick: 0.97, visit: measured });
    expect(chooseByChance(thick, { sure: 0.95, stirredFor: 5 }).step).toBe('deflocculate');
  });

  it('is content with less where a keeper says so', () => {
    const fair = bucket({ low: 0.1, visit: measured });
    expect(chooseByChance(fair, { sure: 0.85, stirredFor: 3 }).step).toBe('use');
    expect(chooseByChance(fair, at).step).toBe('measure');
  });

  it('goes by gravity alone where flow has no window, and to the keeper without one of gravity', () => {
    const noFlow: Sureness = {
      ...bucket({ low: 0.02 }),
      chances: { gravity: { low: 0.02, in: 0.97, high: 0.01 }, flow: null, both: null },
    };
    expect(chooseByChance(noFlow, at).step).toBe('use');
    const neither: Sureness = { ...noFlow, chances: { gravity: null, flow: null, both: null } };
    expect(chooseByChance(neither, at)).toEqual({ step: 'ask-keeper', asks: [] });
  });

  it('always has something to ask of whoever is told to measure', () => {
    for (const low of [0, 0.3, 1])
      for (const thin of [0, 0.3, 1])
        expect(askedWhenMeasuring(bucket({ low, thin, visit: measured }), at)).not.toEqual([]);
  });
});
