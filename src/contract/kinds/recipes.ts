import type { Recipe } from '../../studio/settings/recipe.ts';
import type { Kind } from '../contract.ts';
import { readParts, readRecipe, type Part } from '../../parse/readRecipe.ts';
import { nameKey } from '../../text/normalizedName.ts';

/** A stored recipe by name, or a recipe typed out. */
export const recipe: Kind<Recipe & { name?: string }> = {
  control: 'text',
  prose: true,
  longest: 2_000,
  example: 'feldspar 37, silica 26, whiting 21, kaolin 16, + red iron oxide 3',
  async read(typed, { book, words }) {
    const { recipes } = await book.studio();
    const wanted = nameKey(typed);
    const exact = recipes.find(({ name }) => nameKey(name) === wanted);
    if (exact) return { ok: true, value: exact };
    const begun = wanted === '' ? [] : recipes.filter(({ name }) => nameKey(name).startsWith(wanted));
    const [only] = begun;
    if (only && begun.length === 1) return { ok: true, value: only };
    if (begun.length > 1)
      return {
        ok: false,
        why: words.recipe.whichRecipe(typed),
        choices: begun.slice(0, 5).map(({ name }) => ({ name, value: name })),
      };
    const read = readRecipe(typed);
    if (read.ok) return read;
    const looksNamed = !/\d/.test(typed) && !/[,;\n]/.test(typed);
    return {
      ok: false,
      why: looksNamed
        ? words.recipe.noRecipe(
            typed,
            recipes.map(({ name }) => name),
          )
        : words.recipe.problem(read.why),
    };
  },
  suggest: async (typed, { book }) =>
    (await book.studio()).recipes
      .filter(({ name }) => nameKey(name).includes(nameKey(typed)))
      .slice(0, 25)
      .map(({ name }) => ({ name, value: name })),
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
