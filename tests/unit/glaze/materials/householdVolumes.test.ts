import { expect, it } from 'vitest';
import { householdVolumes as volume } from '../../../../src/glaze/materials/householdVolumes.ts';

// NIST Handbook 44, appendix C; Weights and Measures Act 1985 (both from memory)
it.each([
  ['us-gallon', 3785.411784],
  ['us-quart', 946.352946],
  ['us-cup', 236.5882365],
  ['us-tbsp', 14.78676478125],
  ['imp-gallon', 4546.09],
  ['imp-quart', 1136.5225],
] as const)('%s holds %f ml', (name, ml) => expect(volume[name]).toBeCloseTo(ml, 9));

// common practice
it.each([
  ['metric-tsp', 5],
  ['metric-tbsp', 15],
  ['metric-cup', 250],
  ['drop', 0.05],
] as const)('%s is taken as %f ml', (name, ml) => expect(volume[name]).toBe(ml));
