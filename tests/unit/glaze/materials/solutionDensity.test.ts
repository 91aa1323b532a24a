import { expect, it } from 'vitest';
import { solutionDensity } from '../../../../src/glaze/materials/solutionDensity.ts';
import { celsius, fraction } from '../../../../src/glaze/units.ts';
import { must } from '../../../helpers/glaze/must.ts';

// CRC Handbook of Chemistry and Physics, Concentrative Properties of Aqueous Solutions, 20 °C (from memory), to 0.2 %
it.each([
  ['CaCl2', 0.1, 1083.5],
  ['CaCl2', 0.2, 1177.5],
  ['CaCl2', 0.4, 1395.7],
  ['Na2CO3', 0.02, 1018.9],
  ['Na2CO3', 0.1, 1102.9],
  ['MgSO4', 0.1, 1103.4],
  ['CH3COOH', 0.1, 1012.5],
] as const)('%s at %f by mass has the handbook’s density', (solute, part, density) => {
  const ours = must(solutionDensity({ solute, massFraction: fraction(part), temperature: celsius(20) }));
  expect(Math.abs(ours / density - 1)).toBeLessThan(0.002);
});

it('refuses more salt than the water holds', () => {
  const strong = { solute: 'MgSO4', massFraction: fraction(0.4), temperature: celsius(20) } as const;
  expect(solutionDensity(strong).ok).toBe(false);
});
