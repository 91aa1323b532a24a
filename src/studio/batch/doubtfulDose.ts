import { grams, type Grams, type Millilitres } from '../../glaze/units.ts';
import { saturatedSolutionWith, saltIn } from '../bucket/flocculantSolution.ts';
import { checkpointOfDry, doseStepOfDry } from '../dose/nextDose.ts';
import type { SaidAddition } from './readAddition.ts';

/** A glaze takes drops of deflocculant; a casting slip takes 0.2 to 0.5 % of its dry mass (common practice). */
const mostDeflocculantOfDry = 0.001;

/** Dry powder in a litre at gravity 1.44, and the pail's size when nobody has said one (common practice). */
const dryPerMl = 0.7;
const usualPail = 19_000;

/** The dry powder in a bucket; where it is unknown, that of a full pail, so that the fewest doses are questioned. */
const dryMass = ({ bucket }: SaidAddition): number =>
  (bucket.unknownSince.length === 0 ? bucket.contents?.solids : undefined) ??
  dryPerMl * (bucket.settings.pail ?? usualPail);

export type DoubtfulDose =
  | { what: 'flocculant'; times: number; dose: Millilitres }
  | { what: 'deflocculant'; percent: number; most: Grams };

/** A dose that is large enough to ask about before logging it; undefined for a usual one. */
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
  const salt = saltIn(amount, saltPerLitre);
  if (salt <= checkpointOfDry * dry) return undefined;
  const dose = grams(doseStepOfDry * dry);
  return { what, times: salt / dose, dose: saturatedSolutionWith(dose) };
};
