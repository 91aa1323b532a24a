import { firstOutside, valid, type Checked } from '../checked.ts';
import {
  density,
  gravity,
  type Density,
  type Gravity,
  type OuncesPerImperialPint,
  type OuncesPerUsPint,
} from '../units.ts';

/** The two scales sold for liquids heavier than water: at 60 °F (modulus 145) and the rational one at 15 °C (144.3). */
export type BaumeModulus = 145 | 144.3;

/**
 * Gravity from degrees Baumé on a hydrometer for liquids heavier than water.
 * @formula γ = m/(m − B): m modulus of the scale
 * @param baume B, °Bé, 0 in water · @param modulus 145 when left out
 * @returns gravity, never rounded
 * @range 0 to 72 °Bé; outside is refused
 * @source GNU units 2.22 (modulus 145); Smithells Metals Reference Book (144.3, from memory)
 * @example gravityFromBaume(40) //=> { ok: true, value: 1.3809524 }
 */
export const gravityFromBaume = (baume: number, modulus: BaumeModulus = 145): Checked<Gravity> =>
  firstOutside(['degrees Baumé', baume, 0, 72]) ?? valid(gravity(modulus / (modulus - baume)));

/**
 * Degrees Baumé that a gravity shows on a hydrometer for liquids heavier than water.
 * @formula B = m − m/γ
 * @param slurry γ · @param modulus 145 when left out
 * @returns °Bé, never rounded
 * @range γ 1 to 1.98; outside is refused
 * @source GNU units 2.22 (modulus 145); Smithells Metals Reference Book (144.3, from memory)
 * @example baumeFromGravity(gravity(1.16)) //=> { ok: true, value: 20 }
 */
export const baumeFromGravity = (slurry: Gravity, modulus: BaumeModulus = 145): Checked<number> =>
  firstOutside(['gravity', slurry, 1, 1.98]) ?? valid(modulus - modulus / slurry);

/**
 * Gravity from degrees Twaddell.
 * @formula γ = 1 + T/200
 * @param twaddell T, °Tw, 0 in water
 * @returns gravity, never rounded
 * @range 0 to 200 °Tw; outside is refused
 * @source definition of the Twaddell scale, GNU units 2.22
 * @example gravityFromTwaddell(100) //=> { ok: true, value: 1.5 }
 */
export const gravityFromTwaddell = (twaddell: number): Checked<Gravity> =>
  firstOutside(['degrees Twaddell', twaddell, 0, 200]) ?? valid(gravity(1 + twaddell / 200));

/**
 * Degrees Twaddell that a gravity shows.
 * @formula T = 200(γ − 1)
 * @param slurry γ
 * @returns °Tw, never rounded
 * @range γ 1 to 2; outside is refused
 * @source definition of the Twaddell scale, GNU units 2.22
 * @example twaddellFromGravity(gravity(1.5)) //=> { ok: true, value: 100 }
 */
export const twaddellFromGravity = (slurry: Gravity): Checked<number> =>
  firstOutside(['gravity', slurry, 1, 2]) ?? valid(200 * (slurry - 1));

/** An ounce is 28.349523125 g; the pints are 568.26125 ml and 473.176473 ml. Exact by definition. */
const perImperialPint = 28349.523125 / 568.26125;
const perUsPint = 28349.523125 / 473.176473;

/**
 * Gravity from the weight of an imperial pint, by the potters' rule that its water weighs twenty ounces.
 * @formula γ = P/20
 * @param pint P, oz that a full imperial pint of slurry weighs, without the vessel
 * @returns gravity, never rounded; the exact factor gives 0.2 % less
 * @range 18 to 60 oz; outside is refused
 * @source *common practice*; Rhodes, Clay and Glazes for the Potter (from memory)
 * @example gravityFromImperialPint(ouncesPerImperialPint(28)) //=> { ok: true, value: 1.4 }
 */
export const gravityFromImperialPint = (pint: OuncesPerImperialPint): Checked<Gravity> =>
  firstOutside(['ounces per imperial pint', pint, 18, 60]) ?? valid(gravity(pint / 20));

/**
 * Slurry density from the weight of an imperial pint.
 * @formula ρ = 49.888186·P
 * @param pint P, oz that a full imperial pint of slurry weighs, without the vessel
 * @returns density, kg/m³ or g/l alike, never rounded
 * @range 18 to 60 oz; outside is refused
 * @source derived from the defined ounce and pint; GNU units 2.22
 * @example densityFromImperialPint(ouncesPerImperialPint(30)) //=> { ok: true, value: 1496.65 }
 */
export const densityFromImperialPint = (pint: OuncesPerImperialPint): Checked<Density> =>
  firstOutside(['ounces per imperial pint', pint, 18, 60]) ?? valid(density(pint * perImperialPint));

/**
 * Slurry density from the weight of a US pint.
 * @formula ρ = 59.913214·P
 * @param pint P, oz that a full US pint of slurry weighs, without the vessel
 * @returns density, kg/m³ or g/l alike, never rounded
 * @range 15 to 50 oz; outside is refused
 * @source derived from the defined ounce and pint; GNU units 2.22
 * @example densityFromUsPint(ouncesPerUsPint(24)) //=> { ok: true, value: 1437.92 }
 */
export const densityFromUsPint = (pint: OuncesPerUsPint): Checked<Density> =>
  firstOutside(['ounces per US pint', pint, 15, 50]) ?? valid(density(pint * perUsPint));
