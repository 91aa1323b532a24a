import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dewPoint,
  saturationPressure,
  vapourPressureDeficit,
  wetBulb,
} from '../../src/glaze/air/psychrometrics.ts';
import { flowCups, kinematicViscosityFromCup } from '../../src/glaze/flow/flowCup.ts';
import * as hydrometer from '../../src/glaze/slurry/hydrometer.ts';
import { normalCdf, normalQuantile } from '../../src/glaze/statistics/normal.ts';
import { rimGapFor, pailVolume, pailVolumeUncertainty } from '../../src/glaze/slurry/pailVolume.ts';
import { studentQuantile } from '../../src/glaze/statistics/studentT.ts';
import { viscosityAt20 } from '../../src/glaze/flow/temperatureCorrection.ts';
import { weighedGravityUncertainty } from '../../src/glaze/slurry/uncertainty.ts';
import * as u from '../../src/glaze/units.ts';
import { waterDensity } from '../../src/glaze/water/waterDensity.ts';
import { waterViscosity } from '../../src/glaze/water/waterViscosity.ts';
import { must } from '../helpers/glaze/must.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('scales read both ways', () => {
  it('Baumé and Twaddell turn back into the gravity', () => {
    fc.assert(
      fc.property(between(1, 1.95), fc.constantFrom(145 as const, 144.3 as const), (value, modulus) => {
        const slurry = u.gravity(value);
        const baume = must(hydrometer.baumeFromGravity(slurry, modulus));
        expect(must(hydrometer.gravityFromBaume(baume, modulus))).toBeCloseTo(value, 10);
        const twaddell = must(hydrometer.twaddellFromGravity(slurry));
        expect(must(hydrometer.gravityFromTwaddell(twaddell))).toBeCloseTo(value, 10);
      }),
    );
  });

  it('a normal quantile turns back into its chance', () => {
    fc.assert(
      fc.property(between(1e-9, 1 - 1e-9), (p) => {
        expect(Math.abs(normalCdf(must(normalQuantile(p))) - p)).toBeLessThan(1e-13);
      }),
    );
  });

  it('the gap of a pail turns back into its volume', () => {
    const side = between(100, 600);
    fc.assert(
      fc.property(side, side, side, between(0, 1), (bottom, top, tall, part) => {
        const pail = {
          bottomDiameter: u.millimetres(bottom),
          topDiameter: u.millimetres(top),
          height: u.millimetres(tall),
        };
        const gap = u.millimetres(tall * part);
        const volume = must(pailVolume({ ...pail, gap }));
        expect(must(rimGapFor({ ...pail, volume }))).toBeCloseTo(gap, 6);
        // the standard uncertainty is the slope of the volume
        if (part < 0.01 || part > 0.99) return;
        const lower = must(pailVolume({ ...pail, gap: u.millimetres(gap - 1e-3) }));
        const slope = (lower - volume) / 1e-3;
        const gapStandard = u.millimetres(1);
        expect(must(pailVolumeUncertainty({ ...pail, gap, gapStandard })) / slope).toBeCloseTo(1, 3);
      }),
    );
  });
});

describe('what rises with what', () => {
  const cups = fc.constantFrom(...flowCups);

  it('a longer time from the same cup is a thicker liquid', () => {
    fc.assert(
      fc.property(cups, between(0, 0.99), between(1e-4, 0.01), ({ kind, low, high }, part, more) => {
        const at = (fraction: number) =>
          must(kinematicViscosityFromCup(kind, u.seconds(low + fraction * (high - low))));
        expect(at(part + more)).toBeGreaterThan(at(part));
      }),
    );
  });

  it('warmer water is thinner, and above 4 °C lighter', () => {
    fc.assert(
      fc.property(between(4, 39), between(0.01, 1), (t, warmer) => {
        const [cool, warm] = [u.celsius(t), u.celsius(t + warmer)];
        expect(must(waterViscosity(warm))).toBeLessThan(must(waterViscosity(cool)));
        expect(must(waterDensity(warm))).toBeLessThan(must(waterDensity(cool)));
      }),
    );
  });

  it('a glaze warmer than 20 °C is thicker when brought to 20 °C, a colder one thinner', () => {
    fc.assert(
      fc.property(between(15, 25), between(1, 1000), (t, value) => {
        const viscosity = u.kinematicViscosity(value);
        const there = must(viscosityAt20({ viscosity, temperature: u.celsius(t) }));
        expect(Math.sign(there - value)).toBe(Math.sign(t - 20));
      }),
    );
  });

  it('a drier or warmer room is thirstier; dew point ≤ wet bulb ≤ air', () => {
    fc.assert(
      fc.property(between(1, 55), between(0.02, 0.98), (t, humidity) => {
        const room = { temperature: u.celsius(t), humidity: u.fraction(humidity) };
        const thirst = must(vapourPressureDeficit(room));
        expect(
          must(vapourPressureDeficit({ ...room, humidity: u.fraction(humidity - 0.01) })),
        ).toBeGreaterThan(thirst);
        expect(must(vapourPressureDeficit({ ...room, temperature: u.celsius(t + 1) }))).toBeGreaterThan(
          thirst,
        );
        const dew = must(dewPoint(room));
        expect(must(saturationPressure(dew))).toBeCloseTo(
          humidity * must(saturationPressure(room.temperature)),
          3,
        );
        // over water alone: ice has a lower pressure than water, so the two curves cross below zero
        if (dew < 0.01) return;
        const bulb = must(wetBulb(room));
        expect(dew).toBeLessThanOrEqual(bulb + 1e-6);
        expect(bulb).toBeLessThanOrEqual(t + 1e-6);
      }),
    );
  });

  it('more degrees of freedom make a narrower interval, never narrower than the normal one', () => {
    fc.assert(
      fc.property(between(0.6, 0.999), fc.integer({ min: 1, max: 200 }), (p, degrees) => {
        const wide = must(studentQuantile({ p, degrees }));
        const narrow = must(studentQuantile({ p, degrees: degrees + 1 }));
        expect(narrow).toBeLessThan(wide);
        expect(narrow).toBeGreaterThan(must(normalQuantile(p)));
      }),
      { numRuns: 50 },
    );
  });

  it('a larger vessel or a finer scale is never less sure', () => {
    fc.assert(
      fc.property(
        between(50, 500),
        between(1.1, 1.9),
        between(0.1, 2),
        between(1.1, 4),
        (size, slurry, step, times) => {
          const sure = (water: number, scaleStep: number) =>
            must(
              weighedGravityUncertainty({
                gross: u.grams(50 + water * slurry),
                tare: u.grams(50),
                water: u.grams(water),
                scaleStep: u.grams(scaleStep),
                fillHalfWidth: u.millilitres(1),
              }),
            ).standard;
          expect(sure(size * times, step)).toBeLessThan(sure(size, step));
          expect(sure(size, step * times)).toBeGreaterThan(sure(size, step));
        },
      ),
    );
  });
});
