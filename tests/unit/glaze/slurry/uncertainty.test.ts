import { describe, expect, it } from 'vitest';
import {
  brimHalfWidth,
  expanded95,
  triangular,
  weighedGravityUncertainty,
} from '../../../../src/glaze/slurry/uncertainty.ts';
import { grams } from '../../../../src/glaze/units.ts';
import { must } from '../../../helpers/glaze/must.ts';

const cup = (water: number, gravity: number) =>
  must(
    weighedGravityUncertainty({
      gross: grams(40 + water * gravity),
      tare: grams(40),
      water: grams(water),
      scaleStep: grams(1),
      fillHalfWidth: brimHalfWidth,
      waterScaleStep: grams(1),
    }),
  );

describe('how sure a gravity by weighing is', () => {
  // common practice: a 100 ml cup on a 1 g scale tells ±0.02, a 250 ml cup ±0.01
  it('is about ±0.02 with a 100 ml cup on a 1 g scale', () => {
    expect(expanded95(cup(100, 1.45).standard)).toBeCloseTo(0.02, 2);
  });

  it('is about ±0.01 with a 250 ml cup on the same scale', () => {
    expect(expanded95(cup(250, 1.45).standard)).toBeCloseTo(0.01, 2);
  });

  it('is worse when the vessel itself was weighed on a coarse scale', () => {
    const { gravity, standard } = cup(100, 1.45);
    const certified = must(
      weighedGravityUncertainty({
        gross: grams(185),
        tare: grams(40),
        water: grams(100),
        scaleStep: grams(1),
        fillHalfWidth: brimHalfWidth,
      }),
    );
    expect(gravity).toBeCloseTo(certified.gravity, 12);
    expect(standard).toBeGreaterThan(certified.standard);
  });
});

it('a triangular spread has the variance a²/6 (JCGM 100:2008, 4.3.9)', () => {
  expect(triangular(3) ** 2).toBeCloseTo(9 / 6, 12);
});
