import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recipeSolidsGravity } from '../../src/glaze/slurry/recipeSolids.ts';
import * as slurryOf from '../../src/glaze/slurry/slurry.ts';
import { solidsGravityByDrying } from '../../src/glaze/slurry/solidsByDrying.ts';
import { grams, gravity, ouncesPerImperialPint } from '../../src/glaze/units.ts';
import { must } from '../helpers/glaze/must.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** A particle gravity, and a slurry of it with water in it. */
const slurries = fc.tuple(between(1.9, 7), between(0.01, 0.6)).map(([solids, phi]) => ({
  particleGravity: gravity(solids),
  slurry: gravity(1 + phi * (solids - 1)),
  phi,
}));

describe('powder in a slurry', () => {
  it('its volume and mass fractions are what the grains and the water make', () => {
    fc.assert(
      fc.property(slurries, ({ phi, ...slurry }) => {
        const volumeFraction = must(slurryOf.solidsVolumeFraction(slurry));
        const massFraction = must(slurryOf.solidsMassFraction(slurry));
        expect(volumeFraction).toBeCloseTo(phi, 9);
        expect(massFraction).toBeCloseTo((volumeFraction * slurry.particleGravity) / slurry.slurry, 9);
        const { particleGravity } = slurry;
        expect(must(slurryOf.slurryGravityFromMassFraction({ massFraction, particleGravity }))).toBeCloseTo(
          slurry.slurry,
          9,
        );
      }),
    );
  });

  it('its dry content turns back into its gravity, and rises with it', () => {
    fc.assert(
      fc.property(slurries, ({ slurry, particleGravity }) => {
        const dry = must(slurryOf.dryContent({ slurry, particleGravity }));
        expect(must(slurryOf.slurryGravityFromDryContent({ dry, particleGravity }))).toBeCloseTo(slurry, 9);
        const thicker = gravity(slurry + 1e-6);
        expect(must(slurryOf.dryContent({ slurry: thicker, particleGravity }))).toBeGreaterThan(dry);
      }),
    );
  });

  it('the volume that holds some powder holds that powder', () => {
    fc.assert(
      fc.property(slurries, between(1, 10_000), ({ slurry, particleGravity }, dry) => {
        const volume = must(slurryOf.volumeHolding({ dry: grams(dry), slurry, particleGravity }));
        expect((must(slurryOf.dryContent({ slurry, particleGravity })) * volume) / 1000).toBeCloseTo(dry, 6);
      }),
    );
  });

  it('ounces in an imperial pint are grams in a litre by twenty to a thousand', () => {
    fc.assert(
      fc.property(slurries, ({ slurry, particleGravity }) => {
        const pint = ouncesPerImperialPint(20 * slurry);
        const imperial = must(slurryOf.dryContentImperial({ pint, particleGravity }));
        expect(imperial * 50).toBeCloseTo(must(slurryOf.dryContent({ slurry, particleGravity })), 6);
      }),
    );
  });

  it('a dried sample tells the solids gravity that went in', () => {
    fc.assert(
      fc.property(slurries, ({ slurry, particleGravity }) => {
        const massFraction = must(slurryOf.solidsMassFraction({ slurry, particleGravity }));
        expect(must(solidsGravityByDrying({ slurry, massFraction }))).toBeCloseTo(particleGravity, 5);
      }),
    );
  });
});

describe('solids gravity of a recipe', () => {
  const parts = fc.array(fc.record({ amount: between(0.1, 100), gravity: between(1.9, 7).map(gravity) }), {
    minLength: 1,
    maxLength: 12,
  });

  it('lies between its lightest and its heaviest material, in any order and any batch size', () => {
    fc.assert(
      fc.property(parts, between(0.01, 1000), (recipe, times) => {
        const whole = must(recipeSolidsGravity(recipe));
        const gravities = recipe.map((part) => part.gravity);
        expect(whole).toBeGreaterThanOrEqual(Math.min(...gravities) - 1e-9);
        expect(whole).toBeLessThanOrEqual(Math.max(...gravities) + 1e-9);
        const larger = recipe.map((part) => ({ ...part, amount: part.amount * times })).reverse();
        expect(must(recipeSolidsGravity(larger))).toBeCloseTo(whole, 9);
      }),
    );
  });
});
