import { expect, it } from 'vitest';
import { molarMass } from '../../../src/glaze/molarMass.ts';

// CRC Handbook of Chemistry and Physics (from memory)
it.each([
  ['H2O', 18.015],
  ['SiO2', 60.084],
  ['Al2Si2O5(OH)4', 258.16],
  ['Al2(SO4)3', 342.15],
  ['Ca2B6O11.5H2O', 411.09],
  ['Na2B4O7·10H2O', 381.37],
])('a mole of %s weighs %f g', (formula, mass) => {
  expect(Math.abs((molarMass(formula) ?? Number.NaN) - mass)).toBeLessThan(0.02);
});

it.each(['', 'Xy2', 'MgSO4.', '(OH', 'OH)', '2', 'h2o'])('%j is no formula', (formula) => {
  expect(molarMass(formula)).toBeUndefined();
});
