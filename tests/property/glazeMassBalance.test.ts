import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  blend,
  partsForBlend,
  powderToAdd,
  secondForBlend,
  waterToAdd,
  waterToDrawOff,
} from '../../src/glaze/slurry/massBalance.ts';
import { newBatch, powderForVolume } from '../../src/glaze/slurry/newBatch.ts';
import { dryContent } from '../../src/glaze/slurry/slurry.ts';
import {
  density,
  grams,
  gravity,
  millilitres,
  type Gravity,
  type Millilitres,
} from '../../src/glaze/units.ts';
import { must } from '../helpers/glaze/must.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const volumes = between(100, 200_000).map(millilitres);
const solidsOf = between(2.1, 6).map(gravity);
/** Two gravities of one glaze, the lower first, far enough apart to distinguish. */
const pairs = fc
  .tuple(between(1.02, 1.95), between(1.02, 1.95))
  .map(([a, b]) => ({ thin: gravity(Math.min(a, b)), thick: gravity(Math.max(a, b)) }))
  .filter(({ thin, thick }) => thick - thin > 1e-4);

const near = (actual: number, expected: number, relative = 1e-9) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.max(1, Math.abs(expected)));

const powderIn = (volume: number, slurry: Gravity, solids: Gravity) =>
  (must(dryContent({ slurry, particleGravity: solids })) * volume) / 1000;

describe('water and powder in a bucket', () => {
  it('watering a bucket down leaves its powder as it was', () => {
    fc.assert(
      fc.property(volumes, pairs, solidsOf, (volume, { thin, thick }, solids) => {
        const water = must(waterToAdd({ volume, from: thick, to: thin }));
        near(powderIn(volume + water, thin, solids), powderIn(volume, thick, solids));
      }),
    );
  });

  it('drawing off the water that was poured in gives the bucket back', () => {
    fc.assert(
      fc.property(volumes, pairs, (volume, { thin, thick }) => {
        const water = must(waterToAdd({ volume, from: thick, to: thin }));
        const back = waterToDrawOff({ volume: millilitres(volume + water), from: thin, to: thick });
        near(must(back), water);
      }),
    );
  });

  it('stirring in the powder adds just its weight, and makes the wanted gravity', () => {
    fc.assert(
      fc.property(volumes, pairs, solidsOf, (volume, { thin, thick }, solids) => {
        const powder = must(powderToAdd({ volume, from: thin, to: thick, particleGravity: solids }));
        const after = volume + powder / solids;
        near(volume * thin + powder, after * thick);
        near(powderIn(after, thick, solids), powderIn(volume, thin, solids) + powder);
      }),
    );
  });

  it('no change of gravity needs nothing', () => {
    fc.assert(
      fc.property(volumes, pairs, solidsOf, (volume, { thin: same }, solids) => {
        const change = { volume, from: same, to: same };
        expect(must(waterToAdd(change))).toBe(0);
        expect(must(waterToDrawOff(change))).toBe(0);
        expect(must(powderToAdd({ ...change, particleGravity: solids }))).toBe(0);
      }),
    );
  });

  it('a thicker bucket needs more water, and a fuller one more of everything', () => {
    fc.assert(
      fc.property(volumes, pairs, solidsOf, between(0.001, 0.5), (volume, { thin, thick }, solids, more) => {
        const fuller = millilitres(volume * (1 + more));
        const thicker = gravity(thick + more);
        const water = must(waterToAdd({ volume, from: thick, to: thin }));
        expect(must(waterToAdd({ volume, from: thicker, to: thin }))).toBeGreaterThan(water);
        expect(must(waterToAdd({ volume: fuller, from: thick, to: thin }))).toBeGreaterThan(water);
        const up = { from: thin, to: thick, particleGravity: solids };
        expect(must(powderToAdd({ volume: fuller, ...up }))).toBeGreaterThan(
          must(powderToAdd({ volume, ...up })),
        );
      }),
    );
  });

  it('the wrong way round is refused, not negative', () => {
    fc.assert(
      fc.property(volumes, pairs, solidsOf, (volume, { thin, thick }, solids) => {
        expect(waterToAdd({ volume, from: thin, to: thick }).ok).toBe(false);
        expect(waterToDrawOff({ volume, from: thick, to: thin }).ok).toBe(false);
        expect(powderToAdd({ volume, from: thick, to: thin, particleGravity: solids }).ok).toBe(false);
        expect(powderToAdd({ volume, from: thin, to: solids, particleGravity: solids }).ok).toBe(false);
      }),
    );
  });
});

describe('new batches and blends', () => {
  it('a new batch weighs what went in and has the wanted gravity', () => {
    fc.assert(
      fc.property(between(1, 50_000), solidsOf, between(1.02, 1.95), (powder, solids, wanted) => {
        const { volume, water } = must(
          newBatch({ powder: grams(powder), particleGravity: solids, gravity: gravity(wanted) }),
        );
        near(volume * wanted, powder + water);
        near(volume, water + powder / solids);
        near(must(powderForVolume({ volume, particleGravity: solids, gravity: gravity(wanted) })), powder);
      }),
    );
  });

  it('the second bucket that a blend asks for makes that blend', () => {
    fc.assert(
      fc.property(volumes, pairs, between(0.01, 0.99), (volume, { thin, thick }, part) => {
        const target = gravity(thin + part * (thick - thin));
        const first = { volume, gravity: thick };
        const second = must(secondForBlend({ first, secondGravity: thin, target }));
        near(must(blend({ first, second: { volume: second, gravity: thin } })), target);
        const total = millilitres(volume + second);
        const parts = must(
          partsForBlend({ volume: total, firstGravity: thick, secondGravity: thin, target }),
        );
        near(parts.first, volume, 1e-7);
        near(parts.second, second, 1e-7);
      }),
    );
  });

  it('a blend lies between its two buckets, whichever is poured into which', () => {
    fc.assert(
      fc.property(volumes, volumes, pairs, (one, other, { thin, thick }) => {
        const first = { volume: one, gravity: thin };
        const second = { volume: other, gravity: thick };
        const mixed = must(blend({ first, second }));
        expect(mixed).toBeGreaterThanOrEqual(thin - 1e-12);
        expect(mixed).toBeLessThanOrEqual(thick + 1e-12);
        near(must(blend({ first: second, second: first })), mixed);
      }),
    );
  });
});

describe('a drilling-mud handbook’s formulas give the same amounts', () => {
  // Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover: densities in lb/gal, volumes in bbl
  const waterWeight = 8.33;
  const barrel: Millilitres = millilitres(158_987.294928);
  const pound = 453.59237;
  /** Density of water in g/ml, from the handbook's 8.33 lb/gal. */
  const handbookWater = density((waterWeight * pound) / 3.785411784);
  const mud = between(8.5, 18).map((weight) => ({ weight, gravity: gravity(weight / waterWeight) }));

  it('of dilution with water', () => {
    fc.assert(
      fc.property(mud, mud, between(1, 1000), (a, b, count) => {
        const [light, heavy] = a.weight < b.weight ? [a, b] : [b, a];
        const theirs = (count * (heavy.weight - light.weight)) / (light.weight - waterWeight);
        const volume = millilitres(count * barrel);
        near(must(waterToAdd({ volume, from: heavy.gravity, to: light.gravity })) / barrel, theirs);
      }),
    );
  });

  it('of weighting up with barite of 35 lb/gal, in sacks of 100 lb to 100 bbl', () => {
    fc.assert(
      fc.property(mud, mud, (a, b) => {
        const [light, heavy] = a.weight < b.weight ? [a, b] : [b, a];
        const theirs = (1470 * (heavy.weight - light.weight)) / (35 - heavy.weight);
        const ours = powderToAdd({
          volume: millilitres(100 * barrel),
          from: light.gravity,
          to: heavy.gravity,
          particleGravity: gravity(35 / waterWeight),
          water: handbookWater,
        });
        near(must(ours) / pound / 100, theirs);
      }),
    );
  });
});
