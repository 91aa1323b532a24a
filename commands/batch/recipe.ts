import { asks, logs, needed, optional, refusal, type Reply } from '../../src/contract/contract.ts';
import { materialGravities, recipe } from '../../src/contract/kinds/recipes.ts';
import { name } from '../../src/contract/kinds/texts.ts';
import { fromOption, longList } from '../../src/contract/kinds/longList.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { knownRecipe } from '../../src/replies/batch/knownRecipe.ts';
import { markBuckets } from '../../src/replies/batch/markBuckets.ts';
import { oddSum, recipeCautions, solidsOf } from '../../src/studio/settings/recipe.ts';

export const keepRecipe = logs({
  name: 'recipe',
  about: (w) => w.batch.recipe,
  who: 'keeper',
  options: {
    name: needed(name(60, 'Gull Grey'), (w) => w.batch.name),
    recipe: needed(recipe, (w) => w.batch.recipeOption),
    gravities: optional(materialGravities, (w) => w.batch.gravities),
  },
  async run(v, context) {
    const { words, book } = context;
    const w = words.recipe;
    if (/\d\s*[,;%]|[,;]/.test(v.name)) return refusal(w.nameIsRecipe(v.name));
    const known = await knownRecipe(v.recipe, v.gravities, ['batch', 'recipe'], context);
    if (!known.ok) return known.reply;
    const { lines } = known.recipe;
    const before = (await book.studio()).recipes;
    const logged = stampNow(context);
    const { entry } = await book.logStudio({ kind: 'recipe', recipe: { name: v.name, lines } }, logged);
    const marked = await markBuckets(({ name }) => name === v.name, logged, context);
    const sum = oddSum(known.recipe);
    const replaced = before.some(({ name }) => name.toLowerCase() === v.name.toLowerCase());
    return {
      kind: 'answer',
      title: replaced ? w.replaced(v.name, entry.id) : w.kept(v.name, entry.id),
      facts: [{ label: [words.batch.factSolids], text: words.batch.solids(known.particleGravity) }],
      cautions: [
        ...(marked.length > 0 ? [w.marked(marked)] : []),
        ...(known.unexplained.length > 0 ? [w.unexplained(known.unexplained)] : []),
        ...recipeCautions(known.recipe, known.materials)
          .filter(({ caution }) => caution !== 'silica dust')
          .map((one) => words.batch.materialCaution(one.caution, one.materials)),
      ],
      reasons: [...(sum === undefined ? [] : [w.oddSum(sum)]), w.lines(lines)],
      data: {
        entry: entry.id,
        name: v.name,
        solidsGravity: known.particleGravity,
        lines: lines.map((one) => ({ ...one })),
      },
    };
  },
});

export const listRecipes = asks({
  name: 'recipes',
  about: (w) => w.batch.recipes,
  who: 'member',
  options: { from: fromOption },
  async run(v, asking): Promise<Reply> {
    const { words, book } = asking;
    const { recipes: all, materials } = await book.studio();
    const { rows: recipes, more } = longList(all, ({ name }) => name, v.from, ['batch', 'recipes'], asking);
    return {
      kind: 'answer',
      title: words.recipe.listTitle(all.length),
      facts: recipes.map(({ name, lines }) => ({ label: [{ said: name }], text: words.recipe.lines(lines) })),
      more,
      data: {
        recipes: recipes.map((one) => ({
          name: one.name,
          solidsGravity: solidsOf(one, materials) ?? null,
          lines: one.lines.map((line) => ({ ...line })),
        })),
      },
    };
  },
});
