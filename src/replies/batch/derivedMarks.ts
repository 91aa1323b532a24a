import type { BucketCaution, BucketSettings } from '../../studio/settings/bucketSettings.ts';
import { bucketMarks, marksInText, poisons } from '../../studio/bucket/bucketHazards.ts';
import { recipeCautions, unexplainedMaterials, type Recipe } from '../../studio/settings/recipe.ts';
import type { StudioMaterial } from '../../studio/settings/studioMaterial.ts';
import type { Text } from '../../words/text/text.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { isHazard } from '../../studio/settings/barehanded.ts';
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

type Titles = Pick<Partial<BucketSettings>, 'recipe' | 'glaze' | 'name'>;

/** The hazards that a bucket's recipe and names tell of. */
const toldBy = async (said: Titles, asking: Asking): Promise<BucketCaution[]> => {
  const names = [said.recipe, said.glaze, said.name].filter((one) => one !== undefined);
  const { materials } = await asking.book.studio();
  const recipe = await recipeNamed(names, asking);
  // A recipe that is typed out is read by its materials.
  const titles = names.filter((one) => one !== said.recipe || !recipe || recipe.name !== undefined);
  return [...titles.flatMap(marksInText), ...(recipe ? marksOfRecipe(recipe, materials) : [])];
};

/** Every hazard known of a bucket: by its recipe and names, its marks, and what was poured into it. */
export const knownHazards = async (
  titles: Titles,
  marks: readonly BucketCaution[],
  asking: Asking,
): Promise<BucketCaution[]> => [...new Set([...marks, ...(await toldBy(titles, asking))])].filter(isHazard);

/**
 * A bucket's cautions after a change: its recipe and its name imply some. A keeper's own list of cautions wins, except
 * over lead and similar poisons. Undefined if nothing changes.
 */
export const cautionsAfter = async (
  said: Partial<BucketSettings>,
  before: readonly BucketCaution[],
  asking: Asking,
): Promise<BucketCaution[] | undefined> => {
  const told = await toldBy(said, asking);
  const derived = said.cautions ? poisons.filter((one) => told.includes(one)) : told;
  const all = [...new Set([...(said.cautions ?? before), ...derived])];
  return said.cautions || all.length > before.length ? all : undefined;
};

/** The materials of a bucket's recipe that nobody has explained. */
export const unexplainedOf = async ({ recipe, glaze, name }: Titles, asking: Asking): Promise<string[]> => {
  const names = [recipe, glaze, name].filter((one) => one !== undefined);
  const found = await recipeNamed(names, asking);
  const { materials } = await asking.book.studio();
  return found ? unexplainedMaterials(found, materials) : [];
};

/** A reply about a bucket, with a caution first when its recipe names a material that nobody has explained. */
export const withUnexplained = async (
  reply: Reply,
  { settings }: BucketState,
  asking: Asking,
): Promise<Reply> => ({
  ...reply,
  cautions: [...(await unexplainedIn(settings, asking)), ...(reply.cautions ?? [])],
});

/** What is warned of when a bucket's recipe names a material that nobody has explained. */
export const unexplainedIn = async (titles: Titles, asking: Asking): Promise<Text[]> => {
  const names = await unexplainedOf(titles, asking);
  return names.length > 0 ? [asking.words.recipe.unexplained(names)] : [];
};
