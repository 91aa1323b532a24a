import { expect, it } from 'vitest';
import { molarMass } from '../../../../src/glaze/materials/molarMass.ts';

// CRC Handbook of Chemistry and Physics (from memory)
it.each([
  ['H2O', 18.015],
  ['SiO2', 60.084],
  ['Al2Si2O5(OH)4', 258.16],
  ['Al2(SO4)3', 342.15],
  ['Ca2B6O11.5H2O', 411.09],
  ['Na2B4O7·10H2O', 381.37],
  ['Li2CO3', 73.89],
  ['BaCO3', 197.34],
  ['SrCO3', 147.63],
  ['CeO2', 172.11],
  ['ZrSiO4', 183.31],
  ['K2Cr2O7', 294.19],
  ['CoCO3', 118.94],
  ['Cu2CO3(OH)2', 221.12],
  ['MnO2', 86.94],
  ['NiO', 74.69],
  ['ZnO', 81.38],
  ['SnO2', 150.71],
  ['TiO2', 79.87],
  ['Fe2O3', 159.69],
  ['V2O5', 181.88],
  ['PbO', 223.2],
  ['CdS', 144.47],
  ['Ca10(PO4)6F2', 1008.62],
  ['(NH4)2CO3', 96.09],
])('a mole of %s weighs %f g', (formula, mass) => {
  expect(Math.abs((molarMass(formula) ?? Number.NaN) / mass - 1)).toBeLessThan(1e-4);
});

it.each(['', 'Xy2', 'MgSO4.', '(OH', 'OH)', '2', 'h2o'])('%j is no formula', (formula) => {
  expect(molarMass(formula)).toBeUndefined();
});
