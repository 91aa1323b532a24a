import type { BucketCaution, BucketSettings } from '../../studio/settings/bucketSettings.ts';
import { bucketMarks, marksInText, poisons } from '../../studio/bucket/bucketHazards.ts';
import { recipeCautions, unexplainedMaterials, type Recipe } from '../../studio/settings/recipe.ts';
import type { StudioMaterial } from '../../studio/settings/studioMaterial.ts';
import type { Text } from '../../words/text/text.ts';
import type { Asking } from '../../contract/contract.ts';
import { recipeNamed } from './recipeOfBucket.ts';

/** The boron in a frit does not dissolve: only raw borates need a caution. */
const isFritted = (material: string): boolean => /frit/i.test(material);

/** The cautions that a recipe's materials bring. */
export const marksOfRecipe = (recipe: Recipe, own: readonly StudioMaterial[]): BucketCaution[] =>
  bucketMarks(
    recipeCautions(recipe, own).flatMap(({ caution, materials }) =>
      caution === 'boron' && materials.every(isFritted) ? [] : [caution],
    ),
  );

/**
 * A bucket's cautions after a change: its recipe and its name imply some. A keeper's own list of cautions wins, except
 * over lead and similar poisons. Undefined if nothing changes.
 */
export const cautionsAfter = async (
  said: Partial<BucketSettings>,
  before: readonly BucketCaution[],
  asking: Asking,
): Promise<BucketCaution[] | undefined> => {
  const names = [said.recipe, said.glaze, said.name].filter((one) => one !== undefined);
  const { materials } = await asking.book.studio();
  const recipe = await recipeNamed(names, asking);
  // A recipe that is typed out is judged by its materials.
  const titles = names.filter((one) => one !== said.recipe || !recipe || recipe.name !== undefined);
  const told = [...titles.flatMap(marksInText), ...(recipe ? marksOfRecipe(recipe, materials) : [])];
  const derived = said.cautions ? poisons.filter((one) => told.includes(one)) : told;
  const all = [...new Set([...(said.cautions ?? before), ...derived])];
  return said.cautions || all.length > before.length ? all : undefined;
};

/** The caution for a recipe with a material that nobody has described. */
export const unexplainedIn = async ({ recipe }: Partial<BucketSettings>, asking: Asking): Promise<Text[]> => {
  const found = recipe === undefined ? undefined : await recipeNamed([recipe], asking);
  const { materials } = await asking.book.studio();
  const names = found ? unexplainedMaterials(found, materials) : [];
  return names.length > 0 ? [asking.words.recipe.unexplained(names)] : [];
};
