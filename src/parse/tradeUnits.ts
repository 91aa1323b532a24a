import { householdVolumes as household } from '../glaze/materials/householdVolumes.ts';
import { editDistance } from '../studio/editDistance.ts';
import type { Dimension } from './quantityProblem.ts';
import type { UnitSystem } from '../studio/settings/studio.ts';
import { normalizedText } from '../text/normalizedText.ts';

export interface TradeUnit {
  dimension: Dimension;
  /** Its size in grams, millilitres, millimetres, seconds or kelvins. */
  size: number;
  /** Its reading at zero of the base unit: 32 for Fahrenheit. */
  zero: number;
}

/** Size, names (with _ for a space) and a temperature's zero. Two-meaning names are left out: gr, and t and T for spoons. */
type Row = readonly [size: number, names: string, zero?: number];

/** Exact: the international pound, 0.45359237 kg. */
const POUND = 453.59237;

const MASS: Row[] = [
  [0.001, 'mg milligram milligrams milligramme milligrammes'],
  [1, 'g gm gms gram grams gramme grammes'],
  [1000, 'kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes'],
  [POUND / 16, 'oz ounce ounces'],
  [POUND, 'lb lbs pound pounds #'],
];

const METRIC_VOLUME: Row[] = [
  [household.drop, 'drop drops'],
  [1, 'ml mls cc ccs millilitre millilitres milliliter milliliters'],
  [10, 'cl centilitre centilitres centiliter centiliters'],
  [100, 'dl decilitre decilitres deciliter deciliters'],
  [1000, 'l lt ltr ltrs litre litres liter liters'],
];

const TEASPOON = 'tsp tsps teaspoon teaspoons teaspoonful teaspoonfuls';
const TABLESPOON = 'tbsp tbsps tbs tablespoon tablespoons tablespoonful tablespoonfuls';
const FLUID_OUNCE = 'floz fl_oz fluid_oz fluid_ounce fluid_ounces';
const CUP = 'cup cups c cupful cupfuls';
const PINT = 'pint pints pt pts';
const QUART = 'quart quarts qt qts';
const GALLON = 'gallon gallons gal gals';

const US_VOLUME: Row[] = [
  [household['us-tsp'], TEASPOON],
  [household['us-tbsp'], TABLESPOON],
  [household['us-floz'], FLUID_OUNCE],
  [household['us-cup'], CUP],
  [household['us-pint'], PINT],
  [household['us-quart'], QUART],
  [household['us-gallon'], GALLON],
];

/** Common practice: where gallons are imperial, kitchen spoons are metric and a cup is half a pint. */
const IMPERIAL_VOLUME: Row[] = [
  [household['metric-tsp'], TEASPOON],
  [household['metric-tbsp'], TABLESPOON],
  [household['imp-floz'], FLUID_OUNCE],
  [household['imp-pint'] / 2, CUP],
  [household['imp-pint'], PINT],
  [household['imp-quart'], QUART],
  [household['imp-gallon'], GALLON],
];

const LENGTH: Row[] = [
  [1, 'mm millimetre millimetres millimeter millimeters'],
  [10, 'cm centimetre centimetres centimeter centimeters'],
  [1000, 'm metre metres meter meters'],
  [25.4, 'in ins inch inches "'],
  [304.8, "ft foot feet '"],
];

const DURATION: Row[] = [
  [1, 's sec secs second seconds "'],
  [60, "m min mins minute minutes '"],
  [3600, 'h hr hrs hour hours'],
  [86_400, 'd day days'],
  [604_800, 'w wk wks week weeks'],
];

const TEMPERATURE: Row[] = [
  [1, 'c °c deg_c degree_c degrees_c celsius degrees_celsius centigrade', 0],
  [5 / 9, 'f °f deg_f degree_f degrees_f fahrenheit degrees_fahrenheit', 32],
];

type Units = Map<string, TradeUnit[]>;

const addUnits = (units: Units, dimension: Dimension, table: Row[], before = ''): void => {
  for (const [size, names, zero = 0] of table)
    for (const name of names.split(' ')) {
      const key = before + name.replaceAll('_', ' ');
      units.set(key, [...(units.get(key) ?? []), { dimension, size, zero }]);
    }
};

const unitsOf = (kitchen: Row[]): Units => {
  const units: Units = new Map();
  addUnits(units, 'mass', MASS);
  addUnits(units, 'volume', METRIC_VOLUME);
  addUnits(units, 'volume', kitchen);
  for (const before of ['us ', 'u s ', 'american ']) addUnits(units, 'volume', US_VOLUME, before);
  for (const before of ['imperial ', 'imp ', 'uk ', 'british '])
    addUnits(units, 'volume', IMPERIAL_VOLUME, before);
  addUnits(units, 'length', LENGTH);
  addUnits(units, 'duration', DURATION);
  addUnits(units, 'temperature', TEMPERATURE);
  return units;
};

/** If a metric studio says cups or gallons, it means the US ones. */
const usUnits = unitsOf(US_VOLUME);
const unitsBySystem: Record<UnitSystem, Units> = {
  metric: usUnits,
  us: usUnits,
  imperial: unitsOf(IMPERIAL_VOLUME),
};

/** Ignores case, full stops and extra spaces: `ML`, `ml` and `ml.` are the same unit. */
const normalizedUnit = (name: string): string => normalizedText(name.replaceAll('.', ' '));

/** Every unit with that name: `m` is metres and minutes, `c` is cups and degrees. */
export const unitsNamed = (name: string, system: UnitSystem): readonly TradeUnit[] =>
  unitsBySystem[system].get(normalizedUnit(name)) ?? [];

/** The unit of a dimension that is one letter from what was typed; the shortest of several. */
export const nearestUnit = (name: string, dimension: Dimension, system: UnitSystem): string | undefined => {
  const said = normalizedUnit(name).slice(0, 40);
  if (said.length < 2) return undefined;
  return [...unitsBySystem[system]]
    .filter(([, units]) => units.some((one) => one.dimension === dimension))
    .map(([unit]) => unit)
    .filter((unit) => unit.length >= 2 && !unit.includes(' ') && editDistance(said, unit) === 1)
    .sort((a, b) => a.length - b.length)[0];
};
