import { householdVolumes } from '../../glaze/materials/householdVolumes.ts';

/** Millilitres of a solution as a hand measures them out. */
export const handDose = (ml: number): number => Number(ml.toFixed(ml < 2.5 ? 2 : 1));

/** Drops, counted. */
export const dropsText = (drops: number): string => `${drops} ${drops === 1 ? 'drop' : 'drops'}`;

/** Millilitres of solution as a hand measures them: drops for a jar, teaspoons for a pail. */
export const doseText = (ml: number): string => {
  if (ml < 2.5) {
    const drops = Math.max(1, Math.round(ml / householdVolumes.drop));
    return `${dropsText(drops)} (${Number(ml.toFixed(2))} ml)`;
  }
  const spoons = Math.round((ml / householdVolumes['us-tsp']) * 4) / 4;
  return `${Number(ml.toFixed(1))} ml (about ${spoons} tsp)`;
};
