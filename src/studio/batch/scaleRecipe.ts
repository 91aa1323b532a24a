import { grams, type Grams } from '../../glaze/units.ts';
import type { Recipe } from '../settings/recipe.ts';

export interface WeighedMaterial {
  material: string;
  grams: Grams;
  addition: boolean;
}

/** A total, counted in steps of the scale. */
export const inSteps = (total: Grams, step: Grams): number => Math.round(total / step);

/** Steps as grams, without floating-point digits. */
const fromSteps = (steps: number, step: Grams): Grams => grams(Number((steps * step).toPrecision(12)));

/** The recipe in grams, to the scale's step. The sum is exact: the largest remainders are rounded up. */
export const scaleRecipe = (
  { lines }: Recipe,
  { total, step }: { total: Grams; step: Grams },
): WeighedMaterial[] => {
  const whole = lines.reduce((sum, { amount }) => sum + amount, 0);
  const steps = inSteps(total, step);
  const shares = lines.map(({ amount }) => (steps * amount) / whole);
  const left = steps - shares.reduce((sum, share) => sum + Math.floor(share), 0);
  const luckiest = shares
    .map((share, i) => ({ i, remainder: share - Math.floor(share) }))
    .sort((a, b) => b.remainder - a.remainder || a.i - b.i)
    .slice(0, left)
    .map(({ i }) => i);
  return lines.map(({ material, addition }, i) => ({
    material,
    addition,
    grams: fromSteps(Math.floor(shares[i] ?? 0) + (luckiest.includes(i) ? 1 : 0), step),
  }));
};

/** The nearest weight that the scale shows. */
export const toStep = (weight: Grams, step: Grams): Grams => fromSteps(inSteps(weight, step), step);

/** The recipe for a weight of its base, which is exact; what goes over it is on top, each to the scale's step. */
export const scaleToBase = (
  { lines }: Recipe,
  { base, step }: { base: Grams; step: Grams },
): WeighedMaterial[] => {
  const ground = lines.filter(({ addition }) => !addition);
  const parts = ground.reduce((sum, { amount }) => sum + amount, 0);
  const weighed = scaleRecipe({ lines: ground }, { total: base, step });
  return lines.map((line) => {
    if (!line.addition) return weighed[ground.indexOf(line)] ?? { ...line, grams: grams(0) };
    const { material, amount, addition } = line;
    return { material, addition, grams: toStep(grams((amount * base) / parts), step) };
  });
};

/** The total weight of the materials. */
export const weighedTogether = (materials: readonly WeighedMaterial[], step: Grams): Grams =>
  fromSteps(
    materials.reduce((sum, one) => sum + Math.round(one.grams / step), 0),
    step,
  );
