import { present } from '../../../present.ts';
import { fact } from '../../../contract/replyParts.ts';
import { findMaterial, materials } from '../../../glaze/materials/materials.ts';
import { marksInText } from '../../../studio/bucket/bucketHazards.ts';
import type { BucketState } from '../../../studio/bucket/bucketState.ts';
import type { BucketCaution } from '../../../studio/settings/bucketSettings.ts';
import type { Recipe } from '../../../studio/settings/recipe.ts';
import { normalizedName } from '../../../text/normalizedName.ts';
import type { Asking, Reply } from '../../../contract/contract.ts';
import { recipeOfBucket } from '../../batch/recipeOfBucket.ts';
import type { Sum } from './sumAsked.ts';

/** A bucket in a sentence, and what is asked of it. */
const inIt =
  /^(?:so )?(?:hi |hello )?(?:is|are|any|got|(?:is|are) there(?: any)?|was|does anyone know if) (?:there )?(?:any )?(.+?)(?: (?:is|are))? (?:in|inside|part of) (?:the |this |that |our )?(?:recipe (?:of|for) )?(?:the )?bucket\b(?: recipe)?\W*$/;
const hasIt =
  /\bbucket(?: recipe)? (?:have|has|contain|got|include|includes|use|uses|made (?:with|of))(?: got)?(?: any| some)? (.+?)(?: in(?: it)?)?\W*$/;
const bareIn = /^([a-z][a-z ]{2,30}) in (?:the )?bucket\s*\?\W*$/;
const whichHave =
  /\b(?:which|what|any|whats)(?: of (?:our|the))?(?: (?:buckets?|glazes?|ones?|of them))*(?: (?:that|which|do|does|of ours|here))* (?:have|has|contain|got|with|use|uses|includes?|made (?:with|of|from))(?: got)?(?: any| some| the)? (.+?)(?: in(?: (?:it|them))?)?\W*$/;
const whatsIn =
  /\b(?:whats|what is|what goes|what was|recipe|ingredients)(?: the)? (?:recipe |ingredients )?(?:in|into|of|for) (?:the |this )?bucket\b(?: (?:made of|recipe|ingredients))?\W*$|\bbucket (?:recipe|ingredients)\W*$|\bwhat is (?:the )?bucket made (?:of|from)\W*$/;
const withRecipe = /\brecipe (?:of |for |called |named |is )?(?:the )?(.+?)\W*$/;

const isSame = (line: string, asked: string): boolean => {
  const [one, other] = [findMaterial(line), findMaterial(asked)];
  if (one && other) return one.id === other.id;
  const words = normalizedName(line).split(' ');
  return normalizedName(asked)
    .split(' ')
    .every((word) => words.includes(word));
};

const hasIn = ({ lines }: Recipe, asked: string): boolean =>
  lines.some(({ material }) => isSame(material, asked));

/** “Which buckets have Gull Grey” asks for the pails of one glaze. */
const pailsOfGlaze =
  /\b(?:which|what) (?:buckets?|pails?|ones?)(?: (?:that|do))? (?:have|has|hold|holds|contain|are|is|got)(?: the)?(?: recipe)?(?: (?:of|for|called))? bucket\b(?: in(?: (?:it|them))?)?\W*$/;

/** A text that is a material, or a word in one's name. */
const materialIn = (asked: string, known: readonly string[]): string | undefined => {
  const name = normalizedName(asked.replace(/^(?:the|a|an|any|some) /, ''));
  if (
    name === '' ||
    name.split(' ').length > 4 ||
    /^(?:water|lumps?|crystals?|clay|glaze|it|that|this|powder)$/.test(name)
  )
    return undefined;
  const isKnown =
    findMaterial(name) !== undefined ||
    marksInText(name).length > 0 ||
    [...known, ...materials.flatMap(({ name: own, aliases }) => [own, ...aliases])].some((one) =>
      normalizedName(one).split(' ').includes(name),
    );
  return isKnown ? name : undefined;
};

const marksOf = (state: BucketState, asked: string): BucketCaution[] =>
  marksInText(asked).filter((mark) => state.settings.cautions.includes(mark));

const reply = (
  title: Reply['title'],
  { state, recipe }: { state: BucketState; recipe: Recipe | undefined },
  asking: Asking,
  data: Reply['data'],
): Reply => {
  const { words } = asking;
  const marks = state.settings.cautions.filter((one) => one !== 'children');
  return {
    kind: 'answer',
    title,
    facts: present([
      recipe && fact(words.sum.factRecipe, words.recipe.lines(recipe.lines)),
      marks.length > 0 && fact(words.sum.factMarks, words.sum.marks(marks)),
    ]),
    cautions: marks.map(words.bucket.caution),
    reasons: [words.sum.whatWentIn],
    data: { sum: 'recipe', bucket: state.no, ...data },
  };
};

interface Holding {
  state: BucketState;
  recipe: (Recipe & { name?: string }) | undefined;
}

const bucketsInUse = async (asking: Asking): Promise<Holding[]> =>
  Promise.all(
    (await asking.book.buckets())
      .filter(({ retired }) => !retired)
      .map(async (state) => ({ state, recipe: await recipeOfBucket(state, asking) })),
  );

const pailsWith = (
  name: string,
  holding: readonly Holding[],
  recipe: Recipe | undefined,
  { words }: Asking,
): Reply => ({
  kind: 'answer',
  title: words.sum.ofRecipe(
    name,
    holding.map(({ state }) => state.settings.name),
  ),
  facts: recipe ? [fact(words.sum.factRecipe, words.recipe.lines(recipe.lines))] : [],
  data: { sum: 'recipe', recipe: name, buckets: holding.map(({ state }) => state.no) },
});

/** Whether a material is in a bucket's recipe, and which buckets a recipe or a material is in. */
export const recipeSum: Sum = async ({ heard, bucket, named }, asking) => {
  const { book, words } = asking;
  const w = words.sum;
  const { recipes } = await book.studio();
  const known = recipes.flatMap(({ lines }) => lines.map(({ material }) => material));
  if (bucket) {
    const { name } = bucket.settings;
    if (pailsOfGlaze.test(heard)) {
      const { glaze } = bucket.settings;
      const own = await recipeOfBucket(bucket, asking);
      const all = await bucketsInUse(asking);
      const holding = all.filter(
        ({ state, recipe }) =>
          state.no === bucket.no ||
          (glaze !== undefined && state.settings.glaze === glaze) ||
          (own?.name !== undefined && recipe?.name === own.name),
      );
      return pailsWith(own?.name ?? glaze ?? name, holding, own, asking);
    }
    const asked = inIt.exec(heard)?.[1] ?? hasIt.exec(heard)?.[1] ?? bareIn.exec(heard)?.[1];
    const material = asked === undefined ? undefined : materialIn(asked, known);
    if (material === undefined && !whatsIn.test(heard)) return undefined;
    const recipe = await recipeOfBucket(bucket, asking);
    const found = { state: bucket, recipe };
    if (material === undefined)
      return recipe
        ? reply(
            w.recipeOf(name, words.recipe.lines(recipe.lines)),
            { state: bucket, recipe: undefined },
            asking,
            { recipe: recipe.lines.map((line) => ({ ...line })) },
          )
        : reply(w.noRecipe(name), found, asking, { recipe: null });
    const [mark] = marksOf(bucket, material);
    const holds = recipe && hasIn(recipe, material);
    const title = holds
      ? w.holds(material, name)
      : mark
        ? w.marked(mark, name)
        : recipe
          ? w.holdsNot(material, name)
          : w.noRecipe(name);
    return reply(title, found, asking, {
      material,
      holds: holds || mark !== undefined ? true : recipe ? false : null,
    });
  }
  if (named.length > 0) return undefined;
  const wanted = withRecipe.exec(heard)?.[1];
  const stored =
    wanted === undefined || !/\bwhich|what|who|any\b/.test(heard)
      ? undefined
      : recipes.find((one) => normalizedName(one.name) === normalizedName(wanted));
  const material = stored ? undefined : materialIn(whichHave.exec(heard)?.[1] ?? '', known);
  if (!stored && material === undefined) return undefined;
  const all = await bucketsInUse(asking);
  const nameOf = ({ state }: (typeof all)[number]) => state.settings.name;
  if (stored)
    return pailsWith(
      stored.name,
      all.filter(({ recipe }) => recipe?.name === stored.name),
      stored,
      asking,
    );
  if (material === undefined) return undefined;
  const holding = all.filter(
    ({ state, recipe }) => (recipe && hasIn(recipe, material)) || marksOf(state, material).length > 0,
  );
  const unwritten = all.filter((one) => !one.recipe && !holding.includes(one));
  return {
    kind: 'answer',
    title: w.which(material, holding.map(nameOf)),
    cautions: marksInText(material).map(words.bucket.caution),
    reasons: present([unwritten.length > 0 && w.unwritten(unwritten.map(nameOf)), w.whatWentIn]),
    data: {
      sum: 'recipe',
      material,
      buckets: holding.map(({ state }) => state.no),
      unwritten: unwritten.map(({ state }) => state.no),
    },
  };
};
