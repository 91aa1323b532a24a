import type { Recipe } from '../../studio/settings/recipe.ts';
import type { Kind } from '../contract.ts';
import { readParts, readRecipe, type Part } from '../../parse/readRecipe.ts';
import { byName, exactOrStarting, suggestions } from './studioThings.ts';

/** A stored recipe by name, or a recipe typed out. */
export const recipe: Kind<Recipe & { name?: string }> = {
  control: 'text',
  prose: true,
  longest: 2_000,
  example: 'feldspar 37, silica 26, whiting 21, kaolin 16, + red iron oxide 3',
  async read(typed, { book, words }) {
    const { recipes } = await book.studio();
    const begun = exactOrStarting(recipes, typed);
    if (begun.length > 1)
      return { ok: false, why: words.recipe.whichRecipe(typed), choices: begun.slice(0, 5).map(byName) };
    if (begun[0]) return { ok: true, value: begun[0] };
    const read = readRecipe(typed);
    if (read.ok) return read;
    const looksNamed = !/[\d,;\n]/.test(typed);
    const have = recipes.map(({ name }) => name);
    return {
      ok: false,
      why: looksNamed ? words.recipe.noRecipe(typed, have) : words.recipe.problem(read.why),
    };
  },
  suggest: async (typed, { book }) => suggestions((await book.studio()).recipes, typed),
};

/** Particle gravities of materials that are not in the table: `local clay 2.6, river ash 2.4`. */
export const materialGravities: Kind<Part[]> = {
  control: 'text',
  longest: 2_000,
  example: 'local clay 2.6',
  read(typed, { words }) {
    const parts = readParts(typed);
    if (!parts.ok) return { ok: false, why: words.recipe.gravitiesProblem(parts.why) };
    const odd = parts.value.find(({ amount }) => amount < 1.1 || amount > 12);
    return odd
      ? { ok: false, why: words.recipe.gravityOfGrains(odd.material, odd.amount) }
      : { ok: true, value: parts.value };
  },
};
