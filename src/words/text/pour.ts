import type { UnitSystem } from '../../studio/settings/studio.ts';
import { eachPail } from './measures.ts';

/** An amount for the pail; for each litre or gallon in it, when nobody has said lately how full it is. */
export interface Pour {
  amount: string;
  each: string;
}

export const pour = (
  whole: number | undefined,
  perLitre: number | undefined,
  units: UnitSystem,
  text: (value: number) => string,
): Pour | undefined => {
  if (whole !== undefined) return { amount: text(whole), each: '' };
  if (perLitre === undefined) return undefined;
  const { name, litres } = eachPail(units);
  return { amount: text(perLitre * litres), each: ` for each ${name} in the pail` };
};
