import type { Gravity } from '../../glaze/units.ts';
import { solidsOf, unknownMaterials, withGravities, type Recipe } from '../../studio/settings/recipe.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';
import type { Part } from '../../parse/readRecipe.ts';

type Known = { ok: true; recipe: Recipe; particleGravity: Gravity } | { ok: false; reply: Reply };

/** A recipe of which every material's gravity is known; else the question for it, as a line to fill in. */
export const knownRecipe = (
  typed: Recipe,
  gravities: Part[] | undefined,
  path: readonly string[],
  { words, typed: options }: Asking,
): Known => {
  const { recipe, strays } = withGravities(typed, gravities ?? []);
  const [stray] = strays;
  if (stray !== undefined)
    return { ok: false, reply: { kind: 'refusal', title: words.recipe.strayGravity(stray), data: {} } };
  const unknown = unknownMaterials(recipe);
  if (unknown.length > 0) {
    const said = (gravities ?? []).map(({ material, amount }) => `${material} ${amount}`);
    const asked = [...said, ...unknown.map((material) => `${material} 2.6`)].join(', ');
    return {
      ok: false,
      reply: {
        kind: 'refusal',
        title: words.recipe.unknownMaterials(unknown),
        reasons: [words.recipe.whyGravity],
        actions: [
          {
            label: words.recipe.sayGravity(),
            line: printLine(path, { ...options, gravities: asked }),
            press: 'edit',
          },
        ],
        data: { unknownMaterials: unknown },
      },
    };
  }
  const particleGravity = solidsOf(recipe);
  if (particleGravity === undefined)
    return { ok: false, reply: { kind: 'refusal', title: words.recipe.oddRecipe, data: {} } };
  return { ok: true, recipe, particleGravity };
};
