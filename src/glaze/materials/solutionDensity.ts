import { firstOutside, valid, type Checked } from '../checked.ts';
import { density, type Celsius, type Density, type Fraction } from '../units.ts';
import { waterDensity } from '../water/waterDensity.ts';

export type Solute = 'MgSO4' | 'CaCl2' | 'Na2CO3' | 'CH3COOH';

/** c0 to c4 of each solute, and the mass fraction and temperatures that they were fitted on. */
const solutes: Readonly<
  Record<
    Solute,
    { c: readonly [number, number, number, number, number]; high: number; from: number; to: number }
  >
> = {
  MgSO4: {
    c: [98.1201663080777, 59.265764731786, -0.0303404982114453, 0.000503619228557116, 1763.7594229147],
    high: 0.28,
    from: 0,
    to: 40,
  },
  CaCl2: {
    c: [-9.72893747074295, 14.7005352975276, 4.19033341468332, 0.0397403624277021, 2708.12778894614],
    high: 0.5,
    from: 15,
    to: 40,
  },
  Na2CO3: {
    c: [5.45486543455015e-7, 1.72154929405038e-7, -0.0825850207323492, 0.00168822949783412, 4705.39822185746],
    high: 0.2,
    from: 0,
    to: 40,
  },
  CH3COOH: {
    c: [647.289243971958, -1054.58226029586, -1.74610768626879, 0.000365566432763641, -822.999507010544],
    high: 1,
    from: 5,
    to: 40,
  },
};

/**
 * What a litre of a salt solution or of vinegar weighs.
 * @formula 1/ρ = (1 − w)/ρw + w/ρs, ρs = (c0·w + c1)·exp(10⁻⁶(t + c4)²)/(w + c2 + c3·t)
 * @param solute what is dissolved, without its hydrate water · @param massFraction w, of that · @param temperature t, °C
 * @returns density, kg/m³, never rounded
 * @range MgSO4 0 to 0.28 (the last 0.01 beyond the fitted data), 0 to 40 °C; CaCl2 to 0.5, 15 to 40 °C; Na2CO3 to 0.2, 0 to
 *   40 °C; CH3COOH to 1, 5 to 40 °C; outside is refused
 * @source Laliberté & Cooper, J. Chem. Eng. Data 49 (2004) 1141; coefficients of Laliberté, J. Chem. Eng. Data 54 (2009) 1725
 * @example solutionDensity({ solute: 'MgSO4', massFraction: fraction(0.1), temperature: celsius(20) }) //=> { ok: true, value: 1103.3 }
 */
export const solutionDensity = ({
  solute,
  massFraction: w,
  temperature: t,
}: {
  solute: Solute;
  massFraction: Fraction;
  temperature: Celsius;
}): Checked<Density> => {
  const { c, high, from, to } = solutes[solute];
  const outside = firstOutside(['mass fraction', w, 0, high], ['temperature', t, from, to]);
  if (outside) return outside;
  const water = waterDensity(t);
  if (!water.ok) return water;
  const [c0, c1, c2, c3, c4] = c;
  const apparent = ((c0 * w + c1) * Math.exp(1e-6 * (t + c4) ** 2)) / (w + c2 + c3 * t);
  return valid(density(1 / ((1 - w) / water.value + w / apparent)));
};
