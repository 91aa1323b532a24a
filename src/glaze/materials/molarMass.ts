/** Grams per mole of the elements of a glaze room. IUPAC abridged standard atomic weights, 2021. */
const atomicWeights: Readonly<Record<string, number>> = {
  H: 1.008,
  Li: 6.94,
  B: 10.81,
  C: 12.011,
  N: 14.007,
  O: 15.999,
  F: 18.998,
  Na: 22.99,
  Mg: 24.305,
  Al: 26.982,
  Si: 28.085,
  P: 30.974,
  S: 32.06,
  Cl: 35.45,
  K: 39.098,
  Ca: 40.078,
  Ti: 47.867,
  V: 50.942,
  Cr: 51.996,
  Mn: 54.938,
  Fe: 55.845,
  Co: 58.933,
  Ni: 58.693,
  Cu: 63.546,
  Zn: 65.38,
  Se: 78.971,
  Sr: 87.62,
  Zr: 91.224,
  Cd: 112.41,
  Sn: 118.71,
  Sb: 121.76,
  Ba: 137.33,
  Ce: 140.12,
  Pr: 140.91,
  Nd: 144.24,
  Er: 167.26,
  Pb: 207.2,
  Bi: 208.98,
};

const massOf = (formula: string): number | undefined => {
  const open: number[] = [0];
  const tokens = formula.matchAll(/([A-Z][a-z]?)(\d*)|(\()|\)(\d*)/gy);
  let read = 0;
  for (const [token, element, count, opening, groupCount] of tokens) {
    read += token.length;
    if (opening !== undefined) {
      open.push(0);
      continue;
    }
    const inner = element === undefined ? open.pop() : atomicWeights[element];
    const outer = open.pop();
    if (inner === undefined || outer === undefined) return undefined;
    open.push(outer + inner * Number((element === undefined ? groupCount : count) || 1));
  }
  return read === formula.length && open.length === 1 ? open[0] : undefined;
};

/**
 * Grams in a mole of a compound, hydrate water included.
 * @formula M = Σnᵢ·Aᵢ: Aᵢ standard atomic weights
 * @param formula as written by chemists, such as MgSO4.7H2O or Al2(SO4)3
 * @returns molar mass, g/mol, never rounded; undefined when the formula cannot be read
 * @range elements met in glazes
 * @source IUPAC, Standard Atomic Weights 2021, abridged
 * @example molarMass('MgSO4.7H2O') //=> 246.466
 */
export const molarMass = (formula: string): number | undefined => {
  let total = 0;
  for (const part of formula.split(/[.·]/)) {
    const [, times = '', rest = ''] = /^(\d*)(.*)$/.exec(part) ?? [];
    const mass = rest === '' ? undefined : massOf(rest);
    if (mass === undefined) return undefined;
    total += Number(times || 1) * mass;
  }
  return total;
};
