import { grams, type Grams } from '../../glaze/units.ts';
import type { Recipe } from '../settings/recipe.ts';
import type { UnitSystem } from '../settings/studio.ts';

const pound = 453.59237;
/** Numbers that people call round. */
const round = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

const ladderOf = (units: UnitSystem) =>
  units === 'us' ? { unit: 'lb', size: pound, bag: 50 } : { unit: 'kg', size: 1000, bag: 25 };

/** The round weight nearest to this one, as it is typed; none if it is round already, or too small to matter. */
export const roundBatch = (powder: Grams, units: UnitSystem): string | undefined => {
  const { unit, size } = ladderOf(units);
  const number = powder / size;
  if (!(number >= 0.5)) return undefined;
  const power = 10 ** Math.floor(Math.log10(number));
  const steps = round.map((one) => one * power);
  const nearest = steps.toSorted((a, b) => Math.abs(a - number) - Math.abs(b - number))[0] ?? number;
  if (Math.abs(nearest - number) <= 0.005 * number) return undefined;
  return `${Number(nearest.toPrecision(3))}${unit}`;
};

/** The batch, by all of its powder or by its base, that uses up a bag of its largest material (25 kg or 50 lb: common practice). */
export const bagBatch = (
  { lines }: Recipe,
  { weight, of }: { weight: Grams; of: 'all' | 'base' },
  units: UnitSystem,
): { material: string; bag: string; powder: Grams } | undefined => {
  const { unit, size, bag } = ladderOf(units);
  const counted = lines.filter(({ addition }) => of === 'all' || !addition);
  const parts = counted.reduce((sum, { amount }) => sum + amount, 0);
  const [largest] = counted.toSorted((a, b) => b.amount - a.amount);
  if (!largest || !(largest.amount > 0)) return undefined;
  const whole = (bag * size * parts) / largest.amount;
  // Nobody who asked for a bowlful wants a barrel.
  if (whole > 5 * weight || Math.abs(whole - weight) <= 0.005 * weight) return undefined;
  return { material: largest.material, bag: `${bag} ${unit}`, powder: grams(whole) };
};
