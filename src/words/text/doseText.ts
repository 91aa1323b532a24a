import { householdVolumes } from '../../glaze/materials/householdVolumes.ts';

/** Millilitres of solution as a hand measures them: drops for a jar, teaspoons for a pail. */
export const doseText = (ml: number): string => {
  if (ml < 2.5) {
    const drops = Math.max(1, Math.round(ml / householdVolumes.drop));
    return `${drops} ${drops === 1 ? 'drop' : 'drops'} (${Number(ml.toFixed(2))} ml)`;
  }
  const spoons = Math.round((ml / householdVolumes['us-tsp']) * 4) / 4;
  return `${Number(ml.toFixed(1))} ml (about ${spoons} tsp)`;
};
