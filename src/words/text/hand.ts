import type { Grams } from '../../glaze/units.ts';
import type { UnitSystem, Vessel } from '../../studio/settings/studio.ts';
import { massText, perGallon, volumeText } from './measures.ts';

/** What a studio measures with. */
export interface Measures {
  units: UnitSystem;
  /** Its weighing cups, each with the scale that it was weighed on. */
  vessels?: readonly Pick<Vessel, 'scaleStep'>[];
  /** Powder in a level scoop. */
  scoop?: Grams;
}

/** Whole steps, always down: what is held back can still go in. A hair under a step is that step. */
const stepsIn = (value: number, step: number): number => Math.floor(value / step + 1e-3);

/** So many steps, and never a hair more than the value. */
const downTo = (value: number, step: number): number =>
  Math.min(value, Math.floor(100 * stepsIn(value, step) * step + 1e-6) / 100);

const jugStep = (ml: number): number => {
  if (ml >= 1000) return 100;
  if (ml >= 200) return 50;
  return ml >= 20 ? 10 : 1;
};

/** Quarter cups up to a quart, half cups up to a gallon, then cups. */
const cupStep = (cups: number): number => (cups >= 16 ? 1 : cups >= 4 ? 0.5 : 0.25);

const cupOf = (units: Exclude<UnitSystem, 'metric'>): number => perGallon[units] / 16;

/** Water that a hand can pour: to 100 ml, to 50 below a litre, to 10 below 200 ml; by cups where the studio has cups. */
export const handWater = (ml: number, units: UnitSystem): number => {
  if (ml <= 0) return 0;
  if (units === 'metric') return downTo(ml, jugStep(ml));
  const cup = cupOf(units);
  const cups = stepsIn(ml, cup / 4) / 4;
  return cups === 0 ? downTo(ml, jugStep(ml)) : downTo(ml, cup * cupStep(cups));
};

const cupsText = (cups: number): string => `${Number(cups.toFixed(2))} ${cups > 1 ? 'cups' : 'cup'}`;

/** Water to pour, as a person with a jug or a cup measures it. */
export const waterText = (ml: number, units: UnitSystem): string => {
  const poured = handWater(ml, units);
  if (units === 'metric') return volumeText(poured);
  const cup = cupOf(units);
  const cups = stepsIn(poured, cup / 4) / 4;
  if (cups === 0) return volumeText(poured);
  const gallons = Math.floor(cups / 16);
  if (gallons === 0) return cupsText(cups);
  const rest = cups - 16 * gallons;
  return rest === 0 ? `${gallons} gal` : `${gallons} gal ${cupsText(rest)}`;
};

/**
 * The coarsest scale of the studio, as powder is weighed on; a gram where none is known. From 100 g on a gram is enough,
 * from a kilogram on ten (common practice).
 */
const scaleStep = (grams: number, { vessels = [] }: Measures): number =>
  Math.max(
    grams >= 1000 ? 10 : grams >= 100 ? 1 : 0,
    ...(vessels.length > 0 ? vessels.map((one) => one.scaleStep) : [1]),
  );

/** Half scoops, where the studio has a scoop and at least a half is wanted. */
const halfScoops = (grams: number, { scoop }: Measures): number =>
  scoop === undefined ? 0 : stepsIn(grams, scoop / 2);

/** Powder that a hand can weigh out: half scoops where the studio has a scoop, else to the digit of its scale. */
export const handPowder = (grams: number, measures: Measures): number => {
  if (grams <= 0) return 0;
  const halves = halfScoops(grams, measures);
  if (measures.scoop !== undefined && halves > 0) return downTo(grams, measures.scoop / 2);
  return downTo(grams, scaleStep(grams, measures));
};

export const powderText = (grams: number, measures: Measures): string => {
  const weighed = handPowder(grams, measures);
  const { units } = measures;
  const weight =
    units === 'metric' && weighed < 1000 ? `${Number(weighed.toFixed(1))} g` : massText(weighed, units);
  const scoops = halfScoops(grams, measures) / 2;
  return scoops > 0 ? `${scoops} ${scoops > 1 ? 'scoops' : 'scoop'} (${weight})` : weight;
};
