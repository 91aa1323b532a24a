import { firstOutside, valid, type Checked } from '../checked.ts';
import { solutionDensity } from './solutionDensity.ts';
import { fraction, grams, type Celsius, type Fraction, type Grams, type Millilitres } from '../units.ts';

/** MgSO4 in its heptahydrate, the crystals of a shop's Epsom salt, by mass: 120.361/246.466. IUPAC 2021 weights. */
export const anhydrousInHeptahydrate: Fraction = fraction(120.361 / 246.466);

/**
 * How much magnesium sulfate the water over a bed of its crystals holds.
 * @formula s = 27.89 + 0.381(t − 5) + 0.00295(t − 5)(t − 15)
 * @param t temperature, °C
 * @returns solubility, g MgSO4 without its hydrate water to 100 g water, never rounded
 * @range 0 to 40 °C, where the crystals are the heptahydrate; outside is refused
 * @source derived: parabola through a Pitzer calculation with the parameters of USGS PHREEQC at 5, 15 and 25 °C (Appelo
 *   2015); handbooks differ from it by up to 7 %
 * @example epsomSolubility(celsius(25)) //=> { ok: true, value: 36.1 }
 */
export const epsomSolubility = (t: Celsius): Checked<number> =>
  firstOutside(['temperature', t, 0, 40]) ?? valid(27.89 + 0.381 * (t - 5) + 0.00295 * (t - 5) * (t - 15));

/**
 * Strength of the saturated magnesium sulfate solution.
 * @formula w = s/(100 + s)
 * @param t temperature, °C
 * @returns MgSO4 without its hydrate water, mass fraction of the solution, never rounded
 * @range 0 to 40 °C; outside is refused
 * @source as epsomSolubility; Ting & McCabe, Ind. Eng. Chem. 26 (1934) 1207, give 26.66 % at 25 °C
 * @example saturatedEpsom(celsius(20)) //=> { ok: true, value: 0.2528 }
 */
export const saturatedEpsom = (t: Celsius): Checked<Fraction> => {
  const solubility = epsomSolubility(t);
  return solubility.ok ? valid(fraction(solubility.value / (100 + solubility.value))) : solubility;
};

/**
 * Crystals that a weight of water takes before some stay at the bottom.
 * @formula x = M·s/(100·f − s(1 − f)): f MgSO4 in the heptahydrate, whose own water dilutes
 * @param water M, g · @param temperature °C
 * @returns heptahydrate, g, never rounded; add more than this, so that crystals always stay
 * @range water 0 to 10⁶ g, 0 to 40 °C; outside is refused
 * @source derived: hydrate water counted, on epsomSolubility
 * @example epsomToSaturate({ water: grams(100), temperature: celsius(25) }) //=> { ok: true, value: 118.9 }
 */
export const epsomToSaturate = ({
  water,
  temperature,
}: {
  water: Grams;
  temperature: Celsius;
}): Checked<Grams> => {
  const outside = firstOutside(['water', water, 0, 1e6]);
  if (outside) return outside;
  const solubility = epsomSolubility(temperature);
  if (!solubility.ok) return solubility;
  const s = solubility.value;
  const f = anhydrousInHeptahydrate;
  return valid(grams((water * s) / (100 * f - s * (1 - f))));
};

/**
 * Heptahydrate in a spoon or a drop of saturated solution.
 * @formula m = V·ρ·w/f: ρ density of the solution, w its strength, f MgSO4 in the heptahydrate
 * @param volume V, ml · @param temperature of the solution, °C
 * @returns heptahydrate, g, never rounded
 * @range volume 0 to 10⁶ ml, 0 to 30 °C; outside is refused
 * @source derived on epsomSolubility and Laliberté 2009
 * @example epsomInSolution({ volume: millilitres(4.92892), temperature: celsius(20) }) //=> { ok: true, value: 3.28 }
 */
export const epsomInSolution = ({
  volume,
  temperature,
}: {
  volume: Millilitres;
  temperature: Celsius;
}): Checked<Grams> => {
  const outside = firstOutside(['volume', volume, 0, 1e6], ['temperature', temperature, 0, 30]);
  if (outside) return outside;
  const strength = saturatedEpsom(temperature);
  if (!strength.ok) return strength;
  const density = solutionDensity({ solute: 'MgSO4', massFraction: strength.value, temperature });
  if (!density.ok) return density;
  return valid(grams((volume * (density.value / 1000) * strength.value) / anhydrousInHeptahydrate));
};
