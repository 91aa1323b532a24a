import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grams, gravity, millilitres } from '../../src/glaze/units.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import { correctBucket } from '../../src/studio/batch/correctBucket.ts';
import { decide } from '../../src/studio/verdict/decide.ts';
import { foldBucket } from '../../src/studio/bucket/fold/foldBucket.ts';
import { entryId, memberId, seq, streamNo } from '../../src/studio/ids.ts';
import { scaleRecipe, weighedTogether } from '../../src/studio/batch/scaleRecipe.ts';
import { gullGrey, noonPlus } from '../helpers/store/storeEvents.ts';

const line = fc.record({
  material: fc.constantFrom('feldspar', 'silica', 'whiting', 'kaolin', 'tin oxide'),
  amount: fc.double({ min: 0.001, max: 1000, noNaN: true }),
  addition: fc.boolean(),
});
const recipe = fc.record({ lines: fc.array(line, { minLength: 1, maxLength: 12 }) });
const step = fc.constantFrom(0.01, 0.1, 0.5, 1, 5, 10).map(grams);

describe('a recipe in grams', () => {
  it('sums to the powder exactly, in whole steps, and no material is off by a step', () => {
    fc.assert(
      fc.property(recipe, step, fc.integer({ min: 1, max: 20_000 }), (one, size, steps) => {
        const total = grams(steps * size);
        const weighed = scaleRecipe(one, { total, step: size });
        const whole = one.lines.reduce((sum, { amount }) => sum + amount, 0);
        expect(weighed.reduce((sum, each) => sum + Math.round(each.grams / size), 0)).toBe(steps);
        expect(weighedTogether(weighed, size)).toBeCloseTo(total, 6);
        for (const [i, { grams: own }] of weighed.entries()) {
          const share = (total * (one.lines[i]?.amount ?? 0)) / whole;
          expect(Math.abs(own - share)).toBeLessThan(size * (1 + 1e-6));
          expect(Math.abs(own / size - Math.round(own / size))).toBeLessThan(1e-6);
        }
      }),
    );
  });
});

const stateOf = (
  slurry: number,
  u95: number,
  volume: number,
  look: 'thin' | 'right' | 'thick',
): BucketState => {
  const stream = streamNo(1);
  const entry = (place: number) => ({
    id: entryId(stream, seq(place)),
    stream,
    seq: seq(place),
    at: noonPlus(place),
    loggedAt: noonPlus(place),
    by: memberId('wren'),
  });
  const { volume: _, ...settings } = gullGrey;
  const state = foldBucket(stream, [
    { ...entry(1), event: { kind: 'setup', settings, volume: millilitres(volume) } },
    {
      ...entry(2),
      event: {
        kind: 'reading',
        gravity: { value: gravity(slurry), u95, by: 'stated' },
        look,
        stirred: true,
        seen: [],
      },
    },
  ]);
  if (!state) throw new Error('a setup opens a bucket');
  return state;
};

describe('a correction and the verdict', () => {
  it('never give one bucket two numbers', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.2, max: 1.8, noNaN: true }),
        fc.double({ min: 0.001, max: 0.019, noNaN: true }),
        fc.double({ min: 100, max: 19_000, noNaN: true }),
        fc.constantFrom('thin' as const, 'right' as const, 'thick' as const),
        (slurry, u95, volume, look) => {
          const state = stateOf(slurry, u95, volume, look);
          const now = noonPlus(3);
          const verdict = decide(state, { now, role: 'keeper' });
          const ways = { water: 'waterMl', 'draw-off': 'drawOffMl', dry: 'dryGrams' } as const;
          for (const [way, name] of Object.entries(ways) as [keyof typeof ways, 'waterMl'][]) {
            const named = verdict.amounts[name];
            if (named === undefined) continue;
            expect(correctBucket(state, { way, now })).toMatchObject({
              kind: 'amounts',
              amounts: { [name]: named },
            });
          }
        },
      ),
    );
  });

  it('agree on buckets that are to be left as they are', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.42, max: 1.46, noNaN: true }),
        fc.constantFrom('water' as const, 'draw-off' as const, 'dry' as const),
        (slurry, way) => {
          const state = stateOf(slurry, 0.01, 15_000, 'right');
          expect(correctBucket(state, { way, now: noonPlus(3) }).kind).toBe('in-window');
        },
      ),
    );
  });

  it('never expect a bucket to pass the middle of its window', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.2, max: 1.7, noNaN: true }),
        fc.double({ min: 0.001, max: 0.019, noNaN: true }),
        fc.double({ min: 1000, max: 19_000, noNaN: true }),
        (slurry, u95, volume) => {
          const state = stateOf(slurry, u95, volume, 'right');
          for (const way of ['water', 'draw-off', 'dry'] as const) {
            const found = correctBucket(state, { way, now: noonPlus(3) });
            if (found.kind !== 'amounts' || !found.expected) continue;
            if (slurry > 1.44) expect(found.expected.gravity).toBeGreaterThan(1.44 - 1e-6);
            else expect(found.expected.gravity).toBeLessThan(1.44 + 1e-6);
          }
        },
      ),
    );
  });
});
