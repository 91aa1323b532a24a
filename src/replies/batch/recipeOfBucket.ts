import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Recipe } from '../../studio/settings/recipe.ts';
import type { Asking } from '../../contract/contract.ts';
import { recipe as recipeKind } from '../../contract/kinds/recipes.ts';

/** The recipe that a bucket is set up with; else the one that the studio keeps under its glaze's name. */
export const recipeOfBucket = async (
  { settings }: BucketState,
  asking: Asking,
): Promise<Recipe | undefined> => {
  for (const name of [settings.recipe, settings.glaze, settings.name]) {
    if (name === undefined) continue;
    const read = await recipeKind.read(name, asking);
    if (read.ok) return read.value;
  }
  return undefined;
};
