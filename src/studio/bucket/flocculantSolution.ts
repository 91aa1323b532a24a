import type { Checked } from '../../glaze/checked.ts';
import { epsomInSolution } from '../../glaze/materials/epsomSolution.ts';
import type { AddedOf } from './bucketEvent.ts';
import { celsius, grams, millilitres, type Grams, type Millilitres } from '../../glaze/units.ts';

type Dose = AddedOf<'flocculant'>;

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

/** Epsom salt in a dose; undefined when nobody knows how much it was. */
export const saltAdded = ({ heptahydrate, volume }: Dose): Grams | undefined =>
  heptahydrate ?? (volume === undefined ? undefined : saltInSaturatedSolution(volume));

/** Epsom salt in what was measured out: weighed, or in a solution, saturated unless its strength is known. */
export const saltIn = (
  amount: { mass: Grams } | { volume: Millilitres },
  saltPerLitre: Grams | undefined,
): Grams => {
  if ('mass' in amount) return amount.mass;
  return saltPerLitre === undefined
    ? saltInSaturatedSolution(amount.volume)
    : grams((saltPerLitre * amount.volume) / 1000);
};
