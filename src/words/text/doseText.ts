import { householdVolumes } from '../../glaze/materials/householdVolumes.ts';

/** Less than this is counted in drops. */
const byDrops = 2.5;

/** Nobody counts more than twenty, ml. */
const countable = 1;

/** Whole drops, down; a tenth of one is less than drops differ. */
const dropsIn = (ml: number): number => Math.max(1, Math.floor(ml / householdVolumes.drop + 0.1));

/** Millilitres of a solution as a hand measures them out, in drops or in tenths of a millilitre, always down. */
export const handDose = (ml: number): number => {
  if (ml <= 0) return 0;
  return ml < byDrops
    ? Number((dropsIn(ml) * householdVolumes.drop).toFixed(2))
    : Math.floor(10 * ml + 1e-3) / 10;
};

export const dropsText = (drops: number): string => `${drops} ${drops === 1 ? 'drop' : 'drops'}`;

/** Millilitres of solution as a hand measures them: drops for a jar, teaspoons for a pail. */
export const doseText = (ml: number): string => {
  const dose = handDose(ml);
  const drops = dropsText(dropsIn(ml));
  if (dose <= countable) return `${drops} (${dose} ml)`;
  if (ml < byDrops) return `${dose} ml (${drops})`;
  const spoons = Math.round((dose / householdVolumes['us-tsp']) * 4) / 4;
  return `${dose} ml (about ${spoons} tsp)`;
};
