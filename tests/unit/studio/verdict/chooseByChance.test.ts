import { describe, expect, it } from 'vitest';
import type { Chances } from '../../../../src/studio/belief/chances.ts';
import type { Visit } from '../../../../src/studio/belief/visit.ts';
import { instant } from '../../../../src/studio/ids.ts';
import { gravity } from '../../../../src/glaze/units.ts';
import { chooseByChance, type Sureness } from '../../../../src/studio/verdict/chooseByChance.ts';

const at = {
  sure: 0.95,
  byFinger: 'unknown',
  mayLook: true,
  isCoarse: false,
  isFlagged: false,
  isThickSince: true,
  isStirredOutBefore: false,
} as const;
const visit: Visit = { at: instant(0), readings: 1, weighed: false, timed: false };

const bucket = (more: {
  low?: number;
  high?: number;
  thin?: number;
  thick?: number;
  /** With the margin: some of what is off counts as right. */
  flows?: number;
  both?: number;
  visit?: Partial<Visit>;
  /** How sure a look, or seconds, that were right would make it. */
  ifLook?: number;
  ifSeconds?: number;
}): Sureness => {
  const { low = 0, high = 0, thin = 0, thick = 0 } = more;
  const chances: Chances = {
    gravity: { low, in: 1 - low - high, high },
    flow: { thin, in: more.flows ?? 1 - thin - thick, thick },
    both: more.both ?? (1 - low - high) * (1 - thin - thick),
  };
  return {
    chances,
    visit: more.visit && { ...visit, ...more.visit },
    likely: { value: gravity(1.44), u95: 0.01 },
    wouldBeRight: (by, sure) => ((by === 'look' ? more.ifLook : more.ifSeconds) ?? 0) >= sure,
  };
};

describe('what a stirred bucket asks for, by chance', () => {
  const measured = { weighed: true, timed: true, look: 'right' as const };

  it.each<[string, Sureness, object]>([
    ['it is sure enough to be right: use', bucket({ low: 0.02, thin: 0.02 }), { kind: 'use' }],
    [
      'a look that was right would settle it: look',
      bucket({ low: 0.1, ifLook: 0.96 }),
      { kind: 'ask', asks: ['look'] },
    ],
    [
      'seconds would, and no look: seconds',
      bucket({ low: 0.1, ifLook: 0.9, ifSeconds: 0.97 }),
      { kind: 'ask', asks: ['seconds'] },
    ],
    [
      'neither would: weigh it and time it',
      bucket({ low: 0.3 }),
      { kind: 'ask', asks: ['weight', 'seconds'] },
    ],
    [
      'the look was off: weigh, and time the cup with it',
      bucket({ thin: 0.97, visit: { look: 'thin' }, ifLook: 0.97 }),
      { kind: 'ask', asks: ['weight', 'seconds'] },
    ],
    [
      'it is surely too heavy: water',
      bucket({ high: 0.98, visit: measured }),
      { kind: 'move', gravity: 'high', flow: 'in' },
    ],
    [
      'it is surely too heavy, by a weighing of another visit: weigh it first',
      bucket({ high: 0.98 }),
      { kind: 'ask', asks: ['weight', 'seconds'] },
    ],
    [
      'it is surely too light: water off',
      bucket({ low: 0.98, visit: measured }),
      { kind: 'move', gravity: 'low', flow: 'in' },
    ],
    [
      'it is surely too light and thick',
      bucket({ low: 0.98, thick: 0.98, visit: measured }),
      { kind: 'move', gravity: 'low', flow: 'thick' },
    ],
    [
      'gravity is right and it is surely thin: a dose',
      bucket({ thin: 0.98, visit: measured }),
      { kind: 'move', gravity: 'in', flow: 'thin' },
    ],
    [
      'it is surely thick after a dose, by one reading: the cup may be clogged, so time it again',
      bucket({ thick: 0.98, visit: { ...measured, dosed: true } }),
      { kind: 'ask', asks: ['seconds'] },
    ],
    [
      'it is surely thin of its window, and likely right by its margin: no dose',
      bucket({ thin: 0.98, flows: 0.75, both: 0.75, visit: measured }),
      { kind: 'ask', asks: ['seconds'] },
    ],
    [
      'gravity is in doubt: no dose that would hide water, weigh again',
      bucket({ low: 0.3, thin: 0.98, visit: measured }),
      { kind: 'ask', asks: ['weight', 'seconds'] },
    ],
    [
      'it is thin by a look alone: no dose before a cup was timed',
      bucket({ thin: 0.98, visit: { weighed: true, look: 'thin' } }),
      { kind: 'ask', asks: ['seconds'] },
    ],
    [
      'weight and flow were read just now, and it is likelier right than not by far: use',
      bucket({ low: 0.08, visit: { weighed: true, timed: true } }),
      { kind: 'use' },
    ],
    [
      'eight readings did not tell: the keeper',
      bucket({ low: 0.7, both: 0.3, visit: { ...measured, readings: 8 } }),
      { kind: 'unsettled' },
    ],
  ])('when %s', (_, sureness, expected) => {
    expect(chooseByChance(sureness, at)).toEqual(expected);
  });

  it('times again what ran thick before it was stirred on', () => {
    const thick = bucket({ thick: 0.98, visit: measured });
    expect(chooseByChance(thick, at)).toEqual({ kind: 'move', gravity: 'in', flow: 'thick' });
    expect(chooseByChance(thick, { ...at, isThickSince: false })).toEqual({ kind: 'ask', asks: ['seconds'] });
  });

  it('after five readings takes less to use it, but not while the last weighing does not fit', () => {
    const five = bucket({ low: 0.2, both: 0.75, visit: { ...measured, readings: 5 } });
    expect(chooseByChance(five, at)).toEqual({ kind: 'use' });
    expect(chooseByChance(five, { ...at, isFlagged: true })).toEqual({ kind: 'ask', asks: ['weight'] });
  });

  it('times twice what is thick again soon after a long stir, before deflocculant goes in', () => {
    const out = { ...at, isStirredOutBefore: true };
    const thick = (readings: number) => bucket({ thick: 0.98, visit: { ...measured, readings } });
    expect(chooseByChance(thick(1), out)).toEqual({ kind: 'ask', asks: ['seconds'] });
    expect(chooseByChance(thick(2), out)).toEqual({ kind: 'move', gravity: 'in', flow: 'thick' });
  });

  it('asks for no finger where nobody may dip one in', () => {
    const fair = bucket({ low: 0.1, ifLook: 0.96, ifSeconds: 0.97 });
    expect(chooseByChance(fair, { ...at, mayLook: false })).toEqual({ kind: 'ask', asks: ['seconds'] });
  });

  it('is content with less where a keeper says so', () => {
    const fair = bucket({ low: 0.1, ifLook: 0.96 });
    expect(chooseByChance(fair, { ...at, sure: 0.85 }).kind).toBe('use');
    expect(chooseByChance(fair, at).kind).toBe('ask');
  });

  it('goes by the finger where flow has no window, and to the keeper without one of gravity', () => {
    const noFlow: Sureness = {
      ...bucket({ low: 0.02 }),
      chances: { gravity: { low: 0.02, in: 0.97, high: 0.01 }, flow: null, both: null },
    };
    expect(chooseByChance(noFlow, { ...at, byFinger: 'in' })).toEqual({ kind: 'use' });
    expect(chooseByChance(noFlow, at)).toEqual({ kind: 'move', gravity: 'in', flow: 'unknown' });
    expect(chooseByChance(noFlow, { ...at, byFinger: 'thin' })).toEqual({ kind: 'ask', asks: ['weight'] });
    const neither: Sureness = { ...noFlow, chances: { gravity: null, flow: null, both: null } };
    expect(chooseByChance(neither, at)).toEqual({ kind: 'unsettled' });
  });
});
