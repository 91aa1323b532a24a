import { firstOutside, valid, type Checked } from '../checked.ts';

/** g/mol of acetic acid, CH3COOH. IUPAC 2021 weights. */
const aceticAcid = 60.052;

/**
 * Moles of acetic acid in a litre of vinegar, from the acidity on its label.
 * @formula c = 10·a/M
 * @param acidity a, g in 100 ml
 * @returns mol/l, never rounded
 * @range 0 to 30 g in 100 ml; outside is refused
 * @source derived from the molar mass
 * @example vinegarMolarity(5) //=> { ok: true, value: 0.8326 }
 */
export const vinegarMolarity = (acidity: number): Checked<number> =>
  firstOutside(['acidity', acidity, 0, 30]) ?? valid((10 * acidity) / aceticAcid);
