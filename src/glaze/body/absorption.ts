import { firstOutside, refused, valid, type Checked } from '../checked.ts';
import { density, fraction, type Density, type Fraction, type Grams } from '../units.ts';

/** A fired tile weighed dry, hung in water, and soaked through and wiped. */
export interface SoakedTile {
  dry: Grams;
  suspended: Grams;
  saturated: Grams;
}

export interface Absorption {
  absorption: Fraction;
  apparentPorosity: Fraction;
  bulkDensity: Density;
  apparentGravity: number;
}

/**
 * What a fired body takes up, from three weighings.
 * @formula A = (M − D)/D, P = (M − D)/(M − S), B = D/(M − S), T = D/(D − S): D dry, S suspended, M saturated; so P = A·B
 * @param dry D, g · @param suspended S, hung in water, g · @param saturated M, g
 * @returns absorption and apparent porosity, parts of one; bulk density, kg/m³; apparent specific gravity; never rounded
 * @range 0 ≤ S < D ≤ M, D and M 0.001 to 10⁶ g; outside is refused
 * @source ASTM C373 (formulas from memory)
 * @example absorptionByWeighing({ dry: grams(84.36), suspended: grams(50.12), saturated: grams(95.1) }) //=> { ok: true, value: { absorption: 0.127312, apparentPorosity: 0.238773, bulkDensity: 1875.5, apparentGravity: 2.4638 } }
 */
export const absorptionByWeighing = ({ dry, suspended, saturated }: SoakedTile): Checked<Absorption> => {
  const outside = firstOutside(
    ['saturated weight', saturated, 1e-3, 1e6],
    ['dry weight', dry, 1e-3, saturated],
    ['suspended weight', suspended, 0, dry],
  );
  if (outside) return outside;
  if (!(dry > suspended)) return refused('suspended weight', suspended, 0, dry);
  const exterior = saturated - suspended;
  return valid({
    absorption: fraction((saturated - dry) / dry),
    apparentPorosity: fraction((saturated - dry) / exterior),
    bulkDensity: density((1000 * dry) / exterior),
    apparentGravity: dry / (dry - suspended),
  });
};

/**
 * Absorption of a bisque piece from two weighings, when it cannot be hung in water.
 * @formula A = (M − D)/D
 * @param dry D, g · @param saturated M, soaked and wiped, g
 * @returns absorption, a part of one, never rounded; under the boiled value when it was only soaked cold
 * @range D 0.001 to 10⁶ g, M from D to 2D; outside is refused
 * @source ASTM C373
 * @example absorptionOf({ dry: grams(100), saturated: grams(113) }) //=> { ok: true, value: 0.13 }
 */
export const absorptionOf = ({ dry, saturated }: Omit<SoakedTile, 'suspended'>): Checked<Fraction> =>
  firstOutside(['dry weight', dry, 1e-3, 1e6], ['saturated weight', saturated, dry, 2 * dry]) ??
  valid(fraction((saturated - dry) / dry));

/**
 * Open pores in a body, from its absorption and bulk density.
 * @formula P = A·B/ρw, ρw 1000 kg/m³
 * @param absorption A, a part of one · @param bulkDensity B, kg/m³
 * @returns apparent porosity, a part of one, never rounded
 * @range A 0 to 1, B 500 to 4000 kg/m³, and a porosity under 1; outside is refused
 * @source ASTM C373: P = A·B
 * @example apparentPorosity({ absorption: fraction(0.127312), bulkDensity: density(1875.5) }) //=> { ok: true, value: 0.23877 }
 */
export const apparentPorosity = ({
  absorption,
  bulkDensity,
}: Pick<Absorption, 'absorption' | 'bulkDensity'>): Checked<Fraction> => {
  const porosity = (absorption * bulkDensity) / 1000;
  return (
    firstOutside(
      ['absorption', absorption, 0, 1],
      ['bulk density', bulkDensity, 500, 4000],
      ['apparent porosity', porosity, 0, 0.95],
    ) ?? valid(fraction(porosity))
  );
};

/** Groups of dry-pressed tiles by absorption, above `over` and up to `upTo`. ISO 13006. */
export const tileGroups = [
  { group: 'BIa', over: fraction(0), upTo: fraction(0.005) },
  { group: 'BIb', over: fraction(0.005), upTo: fraction(0.03) },
  { group: 'BIIa', over: fraction(0.03), upTo: fraction(0.06) },
  { group: 'BIIb', over: fraction(0.06), upTo: fraction(0.1) },
  { group: 'BIII', over: fraction(0.1), upTo: fraction(0.2) },
] as const;

/** What studio bisque fired to cone 06 to 04 absorbs. Rhodes; Hamer (from memory). */
export const studioBisque = { low: fraction(0.08), high: fraction(0.18) } as const;
