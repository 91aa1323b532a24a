declare const unit: unique symbol;

/** A number whose type carries its unit, so that grams cannot be passed as millilitres. */
export type Quantity<U extends string> = number & { readonly [unit]: U };

/** Specific gravity: density relative to water at the same temperature. */
export type Gravity = Quantity<'specific gravity'>;
export type Grams = Quantity<'g'>;
export type Millilitres = Quantity<'ml'>;
export type Celsius = Quantity<'°C'>;
export type Seconds = Quantity<'s'>;
export type Micrometres = Quantity<'µm'>;
export type Millimetres = Quantity<'mm'>;
export type Pascals = Quantity<'Pa'>;
/** Kilograms per cubic metre, the same number as grams per litre. */
export type Density = Quantity<'kg/m³'>;
/** Dry powder in a volume of slurry. */
export type GramsPerLitre = Quantity<'g/l'>;
/** Dynamic viscosity. */
export type MillipascalSeconds = Quantity<'mPa·s'>;
export type KinematicViscosity = Quantity<'mm²/s'>;
/** How fast something falls or rises. */
export type MillimetresPerSecond = Quantity<'mm/s'>;
/** Water leaving a wet surface. */
export type GramsPerSquareMetreHour = Quantity<'g/(m²·h)'>;
/** Permeability of a coat or a body to water (Darcy). */
export type SquareMetres = Quantity<'m²'>;
/** Avoirdupois ounces, the weight on an old pottery scale. */
export type Ounces = Quantity<'oz'>;
/** Ounces in one imperial pint of 568 ml, never a US pint of 473 ml. */
export type OuncesPerImperialPint = Quantity<'oz/imp pint'>;
export type OuncesPerUsPint = Quantity<'oz/US pint'>;
/** A part of a whole, 0 to 1. */
export type Fraction = Quantity<'1'>;

const quantity =
  <Q extends Quantity<string>>() =>
  (value: number) =>
    value as Q;

export const gravity = quantity<Gravity>();
export const grams = quantity<Grams>();
export const millilitres = quantity<Millilitres>();
export const celsius = quantity<Celsius>();
export const seconds = quantity<Seconds>();
export const micrometres = quantity<Micrometres>();
export const ounces = quantity<Ounces>();
export const ouncesPerImperialPint = quantity<OuncesPerImperialPint>();
export const ouncesPerUsPint = quantity<OuncesPerUsPint>();
export const millimetres = quantity<Millimetres>();
export const pascals = quantity<Pascals>();
export const density = quantity<Density>();
export const gramsPerLitre = quantity<GramsPerLitre>();
export const millipascalSeconds = quantity<MillipascalSeconds>();
export const kinematicViscosity = quantity<KinematicViscosity>();
export const fraction = quantity<Fraction>();
export const millimetresPerSecond = quantity<MillimetresPerSecond>();
export const gramsPerSquareMetreHour = quantity<GramsPerSquareMetreHour>();
export const squareMetres = quantity<SquareMetres>();
