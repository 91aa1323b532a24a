import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Recipe } from '../../studio/settings/recipe.ts';
import type { Asking } from '../../contract/contract.ts';
import { recipe as recipeKind } from '../../contract/kinds/recipes.ts';

/** The first of these that is a recipe, typed out or kept under that name. */
export const recipeNamed = async (
  names: readonly string[],
  asking: Asking,
): Promise<(Recipe & { name?: string }) | undefined> => {
  for (const name of names) {
    const read = await recipeKind.read(name, asking);
    if (read.ok) return read.value;
  }
  return undefined;
};

/** The recipe that a bucket is set up with; else the one that the studio keeps under its glaze's name. */
export const recipeOfBucket = async ({ settings }: BucketState, asking: Asking) =>
  recipeNamed(
    [settings.recipe, settings.glaze, settings.name].filter((one) => one !== undefined),
    asking,
  );
