import type { Group } from '../src/contract/contract.ts';
import { blendBatch } from './batch/blend.ts';
import { correctBatch } from './batch/correct.ts';
import { planNewBatch } from './batch/plan.ts';
import { keepRecipe, listRecipes } from './batch/recipe.ts';

export const batchGroup: Group = {
  name: 'batch',
  about: (w) => w.batch.about,
  leaves: [correctBatch, planNewBatch, blendBatch, listRecipes, keepRecipe],
};
