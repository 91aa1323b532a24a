import { newBatch, powderForVolume } from '../../glaze/slurry/newBatch.ts';
import { solidsVolumeFraction } from '../../glaze/slurry/slurry.ts';
import { grams, type Grams, type Gravity, type Millilitres } from '../../glaze/units.ts';
import type { Recipe } from '../settings/recipe.ts';
import { inSteps, scaleRecipe, scaleToBase, weighedTogether, type WeighedMaterial } from './scaleRecipe.ts';

/** Denser than this, grains touch: it is a paste (common practice; packed solids are 0.55 to 0.65). */
export const pasteFraction = 0.6;

export interface BatchWanted {
  recipe: Recipe;
  particleGravity: Gravity;
  gravity: Gravity;
  /** Litres of glaze, or a weight of dry powder: of all of it, or of its base alone. */
  amount: { volume: Millilitres } | { powder: Grams } | { base: Grams };
  /** The scale's smallest step. */
  step: Grams;
}

export type BatchPlan =
  | { kind: 'not-glaze' }
  | { kind: 'beyond-powder'; particleGravity: Gravity }
  | { kind: 'paste'; fraction: number }
  | { kind: 'too-small'; step: Grams }
  | { kind: 'plan'; materials: WeighedMaterial[]; powder: Grams; water: Grams; volume: Millilitres };

const totalOf = (amount: BatchWanted['amount'], gravity: Gravity, particleGravity: Gravity): Grams => {
  if ('powder' in amount) return amount.powder;
  if ('base' in amount) return amount.base;
  const wanted = powderForVolume({ volume: amount.volume, gravity, particleGravity });
  return wanted.ok ? wanted.value : grams(0);
};

/** Grams of each material, which sum exactly in steps of the scale, and the water for the wanted gravity. */
export const planBatch = ({ recipe, particleGravity, gravity, amount, step }: BatchWanted): BatchPlan => {
  if (!(gravity > 1)) return { kind: 'not-glaze' };
  const packed = solidsVolumeFraction({ slurry: gravity, particleGravity });
  if (!packed.ok || gravity >= particleGravity) return { kind: 'beyond-powder', particleGravity };
  if (packed.value > pasteFraction) return { kind: 'paste', fraction: packed.value };
  const total = totalOf(amount, gravity, particleGravity);
  if (inSteps(total, step) < 1) return { kind: 'too-small', step };
  const materials =
    'base' in amount ? scaleToBase(recipe, { base: total, step }) : scaleRecipe(recipe, { total, step });
  const powder = weighedTogether(materials, step);
  const made = newBatch({ powder, particleGravity, gravity });
  if (!made.ok) return { kind: 'beyond-powder', particleGravity };
  return { kind: 'plan', materials, powder, ...made.value };
};
