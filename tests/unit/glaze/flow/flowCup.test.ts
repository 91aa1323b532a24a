import { describe, expect, it } from 'vitest';
import { flowCup, flowCups, kinematicViscosityFromCup } from '../../../../src/glaze/flow/flowCup.ts';
import { seconds } from '../../../../src/glaze/units.ts';
import { must } from '../../../helpers/glaze/must.ts';

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

  // Ford: ASTM D1200-94 (2005), 11.2. Zahn: drain times of a maker's cup table after ASTM D4212. ISO 3, 4 and 6 mm: a maker's
  // range table. ISO 5 mm: ISO 2431. DIN: DIN 53211. All seen but ISO 5 mm, from memory.
  it.each([
    ['ford1', 55, 100],
    ['ford2', 40, 100],
    ['ford3', 20, 100],
    ['ford4', 20, 100],
    ['zahn1', 35, 80],
    ['zahn2', 20, 80],
    ['zahn3', 20, 80],
    ['zahn4', 20, 80],
    ['zahn5', 20, 80],
    ['iso3', 27, 120],
    ['iso4', 21, 120],
    ['iso5', 30, 100],
    ['iso6', 17, 120],
    ['din4', 25, 150],
  ] as const)('%s is good from %i to %i s', (kind, low, high) => {
    expect(flowCup(kind)).toMatchObject({ low, high });
  });
});
