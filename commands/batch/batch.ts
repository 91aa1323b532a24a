import type { Group } from '../../src/contract/contract.ts';
import { blendBatch } from './blend.ts';
import { correctBatch } from './correct.ts';
import { planNewBatch } from './plan.ts';
import { keepRecipe, listRecipes } from './recipe.ts';

export const batchGroup: Group = {
  name: 'batch',
  about: (w) => w.batch.about,
  leaves: [correctBatch, planNewBatch, blendBatch, listRecipes, keepRecipe],
};
