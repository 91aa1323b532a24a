import { expect, it } from 'vitest';
import { powderToAdd } from '../../../../src/glaze/slurry/massBalance.ts';
import { newBatch, powderForVolume } from '../../../../src/glaze/slurry/newBatch.ts';
import { density, grams, gravity, millilitres } from '../../../../src/glaze/units.ts';
import { must } from '../../../helpers/glaze/must.ts';

// no water is this light or this heavy: far enough from 1000 to show a factor left out
it.each([950, 1050])('water of %i kg/m³ is weighed as it is', (heaviness) => {
  const water = density(heaviness);
  const [solids, wanted] = [gravity(2.5), gravity(1.4)];
  const made = must(newBatch({ powder: grams(1000), particleGravity: solids, gravity: wanted, water }));
  const perMillilitre = heaviness / 1000;
  // what went in is what the volume weighs, and the volumes add
  expect(made.water + 1000).toBeCloseTo(made.volume * wanted * perMillilitre, 9);
  expect(made.volume).toBeCloseTo(made.water / perMillilitre + 1000 / (solids * perMillilitre), 9);
  expect(
    must(powderForVolume({ volume: made.volume, particleGravity: solids, gravity: wanted, water })),
  ).toBeCloseTo(1000, 9);
  const up = { volume: millilitres(1000), from: gravity(1), to: wanted, particleGravity: solids };
  expect(must(powderToAdd({ ...up, water }))).toBeCloseTo(perMillilitre * must(powderToAdd(up)), 9);
});
