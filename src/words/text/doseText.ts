import { householdVolumes } from '../../glaze/materials/householdVolumes.ts';

/** Up to this much is counted in drops, ml: nobody counts more than twenty. */
const countable = 1;

/** Whole drops, down; a tenth of one is less than drops differ. */
const dropsIn = (ml: number): number => Math.max(1, Math.floor(ml / householdVolumes.drop + 0.1));

/** Millilitres of a solution as a hand measures them out, in drops or in tenths of a millilitre, always down. */
export const handDose = (ml: number): number => {
  if (ml <= 0) return 0;
  return ml <= countable
    ? Number((dropsIn(ml) * householdVolumes.drop).toFixed(2))
    : Math.floor(10 * ml + 1e-3) / 10;
};

export const dropsText = (drops: number): string => `${drops} ${drops === 1 ? 'drop' : 'drops'}`;

const quarters = ['', '¼', '½', '¾'] as const;

/** The nearest quarter of a teaspoon; nothing where that is over a seventh off. */
const spoonsText = (ml: number): string => {
  const spoons = Math.round((ml / householdVolumes['us-tsp']) * 4) / 4;
  if (Math.abs(spoons * householdVolumes['us-tsp'] - ml) > ml / 7) return '';
  const whole = Math.floor(spoons);
  return ` (about ${whole === 0 ? '' : whole}${quarters[4 * (spoons - whole)] ?? ''} tsp)`;
};

/** Millilitres of solution as a hand measures them: drops for a jar, teaspoons for a pail. */
export const doseText = (ml: number): string => {
  const dose = handDose(ml);
  return dose <= countable ? `${dropsText(dropsIn(ml))} (${dose} ml)` : `${dose} ml${spoonsText(dose)}`;
};
