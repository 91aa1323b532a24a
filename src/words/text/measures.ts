import type { Celsius, Grams, Gravity, Millilitres, Seconds } from '../../glaze/units.ts';
import type { Window } from '../../studio/settings/bucketSettings.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';

const decimalText = (value: number, decimals: number) => String(Number(value.toFixed(decimals)));

/** Two digits that a hand can pour or weigh, rounded down: what is held back can still go in. */
export const handAmount = (value: number): number => {
  if (value <= 0) return 0;
  const step = value < 20 ? 0.5 : 10 ** Math.max(0, Math.floor(Math.log10(value)) - 1);
  const finer = step >= 100 ? step / 2 : step;
  return Number((Math.floor(value / finer + 1e-9) * finer).toFixed(1));
};

export const gravityText = (value: Gravity | number): string => value.toFixed(2);

/** Gravity with its 95 % half-interval, no more digits than the interval carries. */
export const gravityWithin = (value: number, u95: number): string => {
  const decimals = u95 < 0.0095 ? 3 : 2;
  return `${value.toFixed(decimals)} ± ${Math.max(u95, 10 ** -decimals).toFixed(decimals)}`;
};

export const perGallon = { us: 3785.411784, imperial: 4546.09 };

const gallons = (ml: number, units: 'us' | 'imperial') => {
  const gallon = perGallon[units];
  const cup = gallon / 16;
  if (ml >= gallon) return `${decimalText(ml / gallon, 1)} gal`;
  if (ml >= cup * 4) return `${decimalText(ml / (cup * 4), 1)} qt`;
  if (ml >= cup / 4) return `${decimalText(ml / cup, 2)} ${ml / cup >= 1.005 ? 'cups' : 'cup'}`;
  return `${decimalText(ml, ml < 20 ? 1 : 0)} ml`;
};

export const volumeText = (ml: Millilitres | number, units: UnitSystem = 'metric'): string => {
  if (units !== 'metric') return gallons(ml, units);
  return ml >= 1000 ? `${decimalText(ml / 1000, 2)} l` : `${decimalText(ml, ml < 20 ? 1 : 0)} ml`;
};

export const massText = (g: Grams | number, units: UnitSystem = 'metric'): string => {
  if (units === 'metric')
    return g >= 1000 ? `${decimalText(g / 1000, 2)} kg` : `${decimalText(g, g < 20 ? 1 : 0)} g`;
  const ounces = g / 28.349523125;
  if (g < 20) return `${decimalText(g, 1)} g`;
  return ounces >= 16 ? `${decimalText(ounces / 16, 2)} lb` : `${decimalText(ounces, 1)} oz`;
};

/** Grams as a scale shows them, also beyond a kilogram. */
export const gramsText = (g: Grams | number): string => `${decimalText(g, 2)} g`;

/** A weight as a scale shows it: to whoever weighed 85.4 g, 85 g is another cup. */
export const scaleText = (g: Grams | number, units: UnitSystem): string => {
  if (units !== 'metric') return `${decimalText(g / 28.349523125, 2)} oz`;
  return g < 1000 ? gramsText(g) : massText(g);
};

/** A volume to the digit that its 95 % half-interval begins with. */
export const volumeTo = (ml: number, u95: number, units: UnitSystem): string => {
  const step = u95 > 1 ? 10 ** Math.floor(Math.log10(u95)) : 1;
  return volumeText(Math.round(ml / step) * step, units);
};

/** What the logbook knows of how full a pail is, is good to a tenth of a litre at best, of a jar to ten millilitres. */
export const volumeAbout = (ml: number, units: UnitSystem = 'metric'): string =>
  volumeTo(ml, ml < 100 ? 0 : ml < 1000 ? 10 : 100, units);

/** The unit that a pail or a jar of so much is told in. */
const pailUnit = (ml: number, units: UnitSystem): { per: number; unit: string } => {
  if (units === 'metric') return ml >= 1000 ? { per: 1000, unit: 'l' } : { per: 1, unit: 'ml' };
  const gallon = perGallon[units];
  if (ml >= gallon) return { per: gallon, unit: 'gal' };
  return ml >= gallon / 4 ? { per: gallon / 4, unit: 'qt' } : { per: 1, unit: 'ml' };
};

/** A volume and its 95 % half-interval in one unit, to the two digits that the interval carries. */
export const volumeWithin = (ml: number, u95: number, units: UnitSystem): string => {
  const { per, unit } = pailUnit(ml, units);
  const step = u95 > 0 ? 10 ** (Math.floor(Math.log10(u95 / per)) - 1) : 1 / per;
  const to = (value: number) => `${decimalText(Math.round(value / per / step) * step, 3)} ${unit}`;
  return `${to(ml)} in the pail, ± ${to(u95)}`;
};

/** A number and its half-interval in one unit, to the digit that the interval begins with; to two when that is a 1. */
const within = (value: number, u95: number, per: number, unit: string): string => {
  const [one, half] = [value / per, u95 / per];
  const first = half > 0 ? Math.floor(Math.log10(half)) : -2;
  const last = Math.max(-3, half < 2 * 10 ** first ? first - 1 : first);
  const to = (number: number) => (Math.round(number / 10 ** last) * 10 ** last).toFixed(Math.max(0, -last));
  return `${to(one)} ± ${to(half)} ${unit}`;
};

/** Whether an amount is told in litres or kilograms: when it reaches one, or its uncertainty reaches a tenth of one. */
const isLarge = (value: number, u95: number): boolean => value >= 1000 || u95 >= 95;

/** An amount of water with its half-interval, such as 1.3 ± 0.4 l. */
export const waterWithin = (ml: number, u95: number, units: UnitSystem): string => {
  if (units === 'metric') return isLarge(ml, u95) ? within(ml, u95, 1000, 'l') : within(ml, u95, 1, 'ml');
  const quart = perGallon[units] / 4;
  return ml >= 4 * quart ? within(ml, u95, 4 * quart, 'gal') : within(ml, u95, quart, 'qt');
};

/** A weight of powder likewise. */
export const powderWithin = (g: number, u95: number, units: UnitSystem): string => {
  if (units === 'metric') return isLarge(g, u95) ? within(g, u95, 1000, 'kg') : within(g, u95, 1, 'g');
  return within(g, u95, 453.59237, 'lb');
};

/** Dry content as the trade says it: grams to the litre, pounds to the US gallon, ounces to the imperial pint. */
export const dryContentText = (gramsPerLitre: number, units: UnitSystem): string => {
  if (units === 'metric') return `${decimalText(gramsPerLitre, 0)} g to the litre`;
  const perUsGallon = (gramsPerLitre * perGallon.us) / 1000 / 453.59237;
  if (units === 'us') return `${decimalText(perUsGallon, 2)} lb to the gallon`;
  return `${decimalText((gramsPerLitre * perGallon.imperial) / 8000 / 28.349523125, 1)} oz to the pint`;
};

/** What an amount for each litre is of, in the studio's measures. */
export const eachPail = (units: UnitSystem): { name: string; litres: number } =>
  units === 'metric' ? { name: 'litre', litres: 1 } : { name: 'gallon', litres: perGallon[units] / 1000 };

export const secondsText = (seconds: Seconds | 'wont-run', u95?: number): string =>
  seconds === 'wont-run'
    ? "won't run"
    : `${decimalText(seconds, 1)}${u95 === undefined ? '' : ` ± ${decimalText(u95, 1)}`} s`;

export const temperatureText = (t: Celsius, units: UnitSystem): string =>
  units === 'us' ? `${decimalText((t * 9) / 5 + 32, 0)} °F` : `${decimalText(t, 1)} °C`;

/** A chance from 0 to 1. */
export const chanceText = (chance: number): string => `${Number((100 * chance).toPrecision(3))} %`;

export const percentText = (percent: number): string => `${Number(percent.toPrecision(2))} %`;

/** A span of hours in the words that people use for it. */
export const spanText = (hours: number): string => {
  const minutes = Math.round(hours * 60);
  if (minutes < 1) return 'under a minute';
  if (minutes < 100) return `${minutes} min`;
  if (hours < 48) return `${decimalText(hours, 1)} h`;
  return `${decimalText(hours / 24, 1)} days`;
};

export const windowText = ({ low, high }: Window<number>, decimals = 2): string =>
  `${low.toFixed(decimals)} to ${high.toFixed(decimals)}`;

export const secondsWindowText = ({ low, high }: Window<number>): string => `${low} to ${high} s`;
