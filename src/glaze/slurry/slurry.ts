import { firstOutside, refused, valid, type Checked } from '../checked.ts';
import {
  density,
  fraction,
  gramsPerLitre,
  gravity,
  millilitres,
  ouncesPerImperialPint,
  type Density,
  type Fraction,
  type Grams,
  type GramsPerLitre,
  type Gravity,
  type Millilitres,
  type OuncesPerImperialPint,
} from '../units.ts';

/** Gravities that a powder can have: lighter ones float or dissolve, heavier ones are metals. */
export const solidsGravityRange = { low: 1.1, high: 12 } as const;
/** Mass of a litre of water in the potter's formula. */
export const nominalWater: Density = density(1000);

interface Slurry {
  slurry: Gravity;
  particleGravity: Gravity;
}

const outsideSlurry = ({ slurry, particleGravity }: Slurry) =>
  firstOutside(
    ['solids gravity', particleGravity, solidsGravityRange.low, solidsGravityRange.high],
    ['slurry gravity', slurry, 1, particleGravity],
  );

/**
 * How much of the bucket's volume is powder.
 * @formula φ = (γ − 1)/(s − 1): γ slurry gravity, s solids gravity
 * @param slurry gravity of the stirred slurry · @param particleGravity gravity of the dry powder's grains
 * @returns volume fraction of solids, 0 to 1, never rounded
 * @range s 1.1 to 12, γ 1 to s; outside is refused
 * @source derived: volumes of water and of grains add
 * @example solidsVolumeFraction({ slurry: gravity(1.4), particleGravity: gravity(2.6) }) //=> { ok: true, value: 0.25 }
 */
export const solidsVolumeFraction = ({ slurry, particleGravity }: Slurry): Checked<Fraction> =>
  outsideSlurry({ slurry, particleGravity }) ?? valid(fraction((slurry - 1) / (particleGravity - 1)));

/**
 * How much of the bucket's weight is powder.
 * @formula w = s(γ − 1)/(γ(s − 1))
 * @param slurry gravity of the stirred slurry · @param particleGravity gravity of the dry powder's grains
 * @returns mass fraction of solids, 0 to 1, never rounded
 * @range s 1.1 to 12, γ 1 to s; outside is refused
 * @source Wills, Mineral Processing Technology, ch. 3, percent solids from pulp density (from memory)
 * @example solidsMassFraction({ slurry: gravity(1.4), particleGravity: gravity(2.65) }) //=> { ok: true, value: 0.45887 }
 */
export const solidsMassFraction = ({ slurry, particleGravity }: Slurry): Checked<Fraction> =>
  outsideSlurry({ slurry, particleGravity }) ??
  valid(fraction((particleGravity * (slurry - 1)) / (slurry * (particleGravity - 1))));

/**
 * Dry powder in a litre of glaze (Brongniart's formula).
 * @formula W = ρw·s(γ − 1)/(s − 1): ρw mass of a litre of water
 * @param slurry gravity of the stirred slurry · @param particleGravity gravity of the dry powder's grains
 * @param water density of water, 1000 g/l when left out, as potters reckon
 * @returns dry content, g/l, never rounded
 * @range s 1.1 to 12, γ 1 to s, water 900 to 1100 g/l; outside is refused
 * @source Brongniart, Traité des arts céramiques, 1844, as quoted in the Handbook for Australian Potters
 * @example dryContent({ slurry: gravity(1.48), particleGravity: gravity(2.6) }) //=> { ok: true, value: 780 }
 */
export const dryContent = ({
  slurry,
  particleGravity,
  water = nominalWater,
}: Slurry & { water?: Density }): Checked<GramsPerLitre> =>
  firstOutside(['density of water', water, 900, 1100]) ??
  outsideSlurry({ slurry, particleGravity }) ??
  valid(gramsPerLitre((water * particleGravity * (slurry - 1)) / (particleGravity - 1)));

/**
 * Dry ounces in an imperial pint of glaze, from the weight of the pint (Brongniart's formula as potters learnt it).
 * @formula W = (P − 20)·s/(s − 1): P ounces that a full imperial pint weighs; its water weighs 20
 * @param pint weight of an imperial pint of slurry, oz · @param particleGravity gravity of the dry powder's grains
 * @returns dry content, oz per imperial pint, never rounded; meaningless for a US pint
 * @range s 1.1 to 12, P 20 to 20·s oz; outside is refused
 * @source Singer & Singer, Industrial Ceramics (form from memory)
 * @example dryContentImperial({ pint: ouncesPerImperialPint(28), particleGravity: gravity(2.6) }) //=> { ok: true, value: 13 }
 */
export const dryContentImperial = ({
  pint,
  particleGravity,
}: {
  pint: OuncesPerImperialPint;
  particleGravity: Gravity;
}): Checked<OuncesPerImperialPint> =>
  firstOutside(
    ['solids gravity', particleGravity, solidsGravityRange.low, solidsGravityRange.high],
    ['ounces per imperial pint', pint, 20, 20 * particleGravity],
  ) ?? valid(ouncesPerImperialPint(((pint - 20) * particleGravity) / (particleGravity - 1)));

/**
 * The gravity of a slurry with a known dry content: Brongniart's formula solved for γ.
 * @formula γ = 1 + W(s − 1)/(s·ρw)
 * @param dry dry content, g/l · @param particleGravity gravity of the dry powder's grains
 * @param water density of water, 1000 g/l when left out
 * @returns slurry gravity, never rounded
 * @range s 1.1 to 12, W 0 to s·ρw, water 900 to 1100 g/l; outside is refused
 * @source Brongniart 1844, solved for γ
 * @example slurryGravityFromDryContent({ dry: gramsPerLitre(780), particleGravity: gravity(2.6) }) //=> { ok: true, value: 1.48 }
 */
export const slurryGravityFromDryContent = ({
  dry,
  particleGravity,
  water = nominalWater,
}: {
  dry: GramsPerLitre;
  particleGravity: Gravity;
  water?: Density;
}): Checked<Gravity> =>
  firstOutside(
    ['density of water', water, 900, 1100],
    ['solids gravity', particleGravity, solidsGravityRange.low, solidsGravityRange.high],
    ['dry content', dry, 0, particleGravity * water],
  ) ?? valid(gravity(1 + (dry * (particleGravity - 1)) / (particleGravity * water)));

/**
 * The gravity of a slurry with a known mass fraction of powder, in water or another liquid.
 * @formula γ = 1/(w/s + (1 − w)/l): l gravity of the liquid
 * @param massFraction solids by mass, 0 to 1 · @param particleGravity gravity of the grains · @param liquid 1 when left out: water
 * @returns slurry gravity, never rounded
 * @range w 0 to 1, s 1.1 to 12, l 0.7 to 2; outside is refused
 * @source Wills, Mineral Processing Technology, ch. 3, pulp density (from memory)
 * @example slurryGravityFromMassFraction({ massFraction: fraction(0.4), particleGravity: gravity(2.7) }) //=> { ok: true, value: 1.33663 }
 */
export const slurryGravityFromMassFraction = ({
  massFraction,
  particleGravity,
  liquid = gravity(1),
}: {
  massFraction: Fraction;
  particleGravity: Gravity;
  liquid?: Gravity;
}): Checked<Gravity> =>
  firstOutside(
    ['solids by mass', massFraction, 0, 1],
    ['solids gravity', particleGravity, solidsGravityRange.low, solidsGravityRange.high],
    ['liquid gravity', liquid, 0.7, 2],
  ) ?? valid(gravity(1 / (massFraction / particleGravity + (1 - massFraction) / liquid)));

/**
 * Parts of water to one part of powder by weight.
 * @formula D = (1 − w)/w
 * @param massFraction solids by mass
 * @returns water over solids, by mass, never rounded
 * @range w 10⁻⁶ to 1; outside is refused
 * @source Taggart, Handbook of Mineral Dressing, dilution ratio (from memory)
 * @example waterToSolids(fraction(0.4)) //=> { ok: true, value: 1.5 }
 */
export const waterToSolids = (massFraction: Fraction): Checked<number> =>
  firstOutside(['solids by mass', massFraction, 1e-6, 1]) ?? valid((1 - massFraction) / massFraction);

/**
 * How much slurry to measure out for a wanted weight of dry powder.
 * @formula V = 1000·m/W: W dry content, g/l
 * @param dry wanted powder, g · @param slurry gravity of the stirred slurry · @param particleGravity gravity of the grains
 * @returns slurry, ml, never rounded
 * @range m 0 to 10⁹ g, s 1.1 to 12, γ above 1, up to s; outside is refused
 * @source Brongniart 1844; tabled in the Handbook for Australian Potters
 * @example volumeHolding({ dry: grams(100), slurry: gravity(1.2), particleGravity: gravity(2.6) }) //=> { ok: true, value: 307.692 }
 */
export const volumeHolding = ({
  dry,
  slurry,
  particleGravity,
  water = nominalWater,
}: Slurry & { dry: Grams; water?: Density }): Checked<Millilitres> => {
  const content = dryContent({ slurry, particleGravity, water });
  if (!content.ok) return content;
  if (content.value === 0) return refused('slurry gravity', slurry, 1, particleGravity);
  return firstOutside(['dry powder', dry, 0, 1e9]) ?? valid(millilitres((1000 * dry) / content.value));
};
