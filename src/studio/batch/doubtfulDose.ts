import { grams, type Grams, type Millilitres } from '../../glaze/units.ts';
import { saltInSaturatedSolution, saturatedSolutionWith } from '../bucket/flocculantSolution.ts';
import { checkpointOfDry, rungOfDry } from '../dose/nextDose.ts';
import type { SaidAddition } from './readAddition.ts';

/** A glaze takes deflocculant by the drop; a casting slip, which has far more, 0.2 to 0.5 % of its dry mass (common practice). */
const mostDeflocculantOfDry = 0.001;

/** Dry powder of a litre at 1.44, and a pail's size where nobody has said one (common practice). */
const dryPerMl = 0.7;
const usualPail = 19_000;

/** The dry powder in a bucket, as far as the logbook knows; else that of a full pail, which doubts the least. */
const dryMass = ({ bucket }: SaidAddition): number =>
  (bucket.unknownSince.length === 0 ? bucket.contents?.solids : undefined) ??
  dryPerMl * (bucket.settings.pail ?? usualPail);

export type DoubtfulDose =
  | { what: 'flocculant'; times: number; dose: Millilitres }
  | { what: 'deflocculant'; percent: number; most: Grams };

/** A dose so large that it is asked about before it is logged; undefined for one that people give. */
export const doubtfulDose = (said: SaidAddition): DoubtfulDose | undefined => {
  const { what, amount, saltPerLitre } = said;
  if (!amount || (what !== 'flocculant' && what !== 'deflocculant')) return undefined;
  const dry = dryMass(said);
  if (what === 'deflocculant') {
    const mass = 'mass' in amount ? amount.mass : amount.volume;
    return mass > mostDeflocculantOfDry * dry
      ? { what, percent: (100 * mass) / dry, most: grams(mostDeflocculantOfDry * dry) }
      : undefined;
  }
  const salt =
    'mass' in amount
      ? amount.mass
      : saltPerLitre === undefined
        ? saltInSaturatedSolution(amount.volume)
        : (saltPerLitre * amount.volume) / 1000;
  if (salt <= checkpointOfDry * dry) return undefined;
  const dose = grams(rungOfDry * dry);
  return { what, times: salt / dose, dose: saturatedSolutionWith(dose) };
};
