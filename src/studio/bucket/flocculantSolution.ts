import type { Checked } from '../../glaze/checked.ts';
import { epsomInSolution } from '../../glaze/materials/epsomSolution.ts';
import { celsius, grams, millilitres, type Grams, type Millilitres } from '../../glaze/units.ts';

/** The jar of solution stands in the glaze room. */
export const roomTemperature = celsius(20);

const certain = (found: Checked<Grams>): Grams => {
  if (!found.ok) throw new Error(`no strength of Epsom salt solution: ${found.outOfRange.quantity}`);
  return found.value;
};

const heptahydratePerMl = certain(epsomInSolution({ volume: millilitres(1), temperature: roomTemperature }));

/** Epsom salt, as heptahydrate, in a volume of its saturated solution. */
export const saltInSaturatedSolution = (solution: Millilitres): Grams => grams(solution * heptahydratePerMl);

export const saturatedSolutionWith = (heptahydrate: Grams): Millilitres =>
  millilitres(heptahydrate / heptahydratePerMl);
