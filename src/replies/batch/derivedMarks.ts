import type { BucketCaution, BucketSettings } from '../../studio/settings/bucketSettings.ts';
import { bucketMarks, marksInText, poisons } from '../../studio/bucket/bucketHazards.ts';
import { recipeCautions, unexplainedMaterials, type Recipe } from '../../studio/settings/recipe.ts';
import type { StudioMaterial } from '../../studio/settings/studioMaterial.ts';
import type { Text } from '../../words/text/text.ts';
import type { Asking } from '../../contract/contract.ts';
import { recipeNamed } from './recipeOfBucket.ts';

/** The boron of a frit does not dissolve: only raw borates make a bucket one to warn of. */
const isFritted = (material: string): boolean => /frit/i.test(material);

/** What a recipe puts into a bucket. */
export const marksOfRecipe = (recipe: Recipe, own: readonly StudioMaterial[]): BucketCaution[] =>
  bucketMarks(
    recipeCautions(recipe, own).flatMap(({ caution, materials }) =>
      caution === 'boron' && materials.every(isFritted) ? [] : [caution],
    ),
  );

/**
 * The cautions of a bucket after what was just said of it: a recipe and a name tell hazards of their own. A keeper who
 * lists the cautions has the last word, except over lead and its like. Undefined when nothing is to be set.
 */
export const cautionsAfter = async (
  said: Partial<BucketSettings>,
  before: readonly BucketCaution[],
  asking: Asking,
): Promise<BucketCaution[] | undefined> => {
  const names = [said.recipe, said.glaze, said.name].filter((one) => one !== undefined);
  const { materials } = await asking.book.studio();
  const recipe = await recipeNamed(names, asking);
  // A recipe that is typed out is read by its materials.
  const titles = names.filter((one) => one !== said.recipe || !recipe || recipe.name !== undefined);
  const told = [...titles.flatMap(marksInText), ...(recipe ? marksOfRecipe(recipe, materials) : [])];
  const derived = said.cautions ? poisons.filter((one) => told.includes(one)) : told;
  const all = [...new Set([...(said.cautions ?? before), ...derived])];
  return said.cautions || all.length > before.length ? all : undefined;
};

/** What is warned of when a bucket's recipe names a material that nobody has explained. */
export const unexplainedIn = async ({ recipe }: Partial<BucketSettings>, asking: Asking): Promise<Text[]> => {
  const found = recipe === undefined ? undefined : await recipeNamed([recipe], asking);
  const { materials } = await asking.book.studio();
  const names = found ? unexplainedMaterials(found, materials) : [];
  return names.length > 0 ? [asking.words.recipe.unexplained(names)] : [];
};
