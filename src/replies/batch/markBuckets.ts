import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Recipe } from '../../studio/settings/recipe.ts';
import type { Logging } from '../../contract/contract.ts';
import { marksOfRecipe } from './derivedMarks.ts';
import { holdPoisoned } from '../bucket/holdPoisoned.ts';
import { recipeOfBucket } from './recipeOfBucket.ts';

/** Marks every bucket in use whose recipe is one of these with what is known now to be in it; answers which were marked. */
export const markBuckets = async (
  isMeant: (recipe: Recipe & { name?: string }) => boolean,
  logged: Parameters<Logging['book']['log']>[2],
  context: Logging,
): Promise<BucketState[]> => {
  const { book } = context;
  const { materials } = await book.studio();
  const marked: BucketState[] = [];
  for (const state of await book.buckets()) {
    const recipe = state.retired ? undefined : await recipeOfBucket(state, context);
    if (!recipe || !isMeant(recipe)) continue;
    const before = state.settings.cautions;
    const fresh = marksOfRecipe(recipe, materials).filter((one) => !before.includes(one));
    if (fresh.length === 0) continue;
    const cautions = [...before.filter((one) => one !== 'children'), ...fresh];
    const changed = await book.log(state.no, { kind: 'change', settings: { cautions } }, logged);
    marked.push(await holdPoisoned(changed.state, before, logged, context));
  }
  return marked;
};
