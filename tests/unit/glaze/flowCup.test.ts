import { describe, expect, it } from 'vitest';
import { flowCup, flowCups, kinematicViscosityFromCup } from '../../../src/glaze/flowCup.ts';
import { seconds } from '../../../src/glaze/units.ts';
import { must } from './must.ts';

describe('the standard flow cups', () => {
  it('are fourteen, each once', () => {
    expect(new Set(flowCups.map(({ kind }) => kind)).size).toBe(14);
    for (const cup of flowCups) expect(flowCup(cup.kind)).toBe(cup);
  });

  it.each(flowCups)(
    '$name answers at both ends of its times, and refuses just outside',
    ({ kind, low, high }) => {
      expect(must(kinematicViscosityFromCup(kind, low))).toBeGreaterThan(0);
      expect(must(kinematicViscosityFromCup(kind, high))).toBeGreaterThan(0);
      for (const efflux of [low - 0.01, high + 0.01]) {
        const refusal = kinematicViscosityFromCup(kind, seconds(efflux));
        expect(refusal).toEqual({
          ok: false,
          outOfRange: { quantity: 'efflux time', value: efflux, low, high },
        });
      }
    },
  );

  // ASTM D1200-94 (2005), 11.2: 55 to 100 s for cup 1, 40 to 100 s for cup 2, 20 to 100 s for cups 3 and 4
  it.each([
    ['ford1', 55],
    ['ford2', 40],
    ['ford3', 20],
    ['ford4', 20],
  ] as const)('%s starts at the %i s of its standard and ends at 100 s', (kind, low) => {
    expect(flowCup(kind).low).toBe(low);
    expect(flowCup(kind).high).toBe(100);
  });
});
