import { hazardsInName } from '../../glaze/materials/hazardWords.ts';
import type { Gravity } from '../../glaze/units.ts';
import {
  solidsOf,
  unexplainedMaterials,
  unknownMaterials,
  withGravities,
  type Recipe,
} from '../../studio/settings/recipe.ts';
import type { StudioMaterial } from '../../studio/settings/studioMaterial.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';
import type { Part } from '../../parse/readRecipe.ts';

type Known =
  | {
      ok: true;
      recipe: Recipe;
      particleGravity: Gravity;
      /** What the studio knows besides the table. */
      materials: readonly StudioMaterial[];
      /** Only their gravity was said. */
      unexplained: string[];
    }
  | { ok: false; reply: Reply };

/** What a material is comes before its gravity: a keeper says it once, for all recipes. */
const whatIs = (unknown: readonly string[], { words, role }: Asking): Reply => {
  const w = words.recipe;
  const hazards = unknown.map((material) => ({ material, hazards: hazardsInName(material) }));
  return {
    kind: 'refusal',
    title: w.unknownMaterials([...unknown]),
    cautions: hazards.flatMap((one) =>
      one.hazards.map((hazard) => words.batch.materialCaution(hazard, [one.material])),
    ),
    reasons: [...(role === 'keeper' ? [] : [w.askKeeper(unknown[0] ?? '')]), w.whyAsked, w.whyGravity],
    actions:
      role === 'keeper'
        ? unknown.slice(0, 3).map((material) => ({
            label: w.sayWhat(material),
            line: printLine(['studio', 'material'], { name: material }),
            press: 'edit' as const,
          }))
        : [],
    data: {
      unknownMaterials: [...unknown],
      hazards: Object.fromEntries(hazards.map((one) => [one.material, one.hazards])),
    },
  };
};

/** A recipe of which every material's gravity is known; else the question what a material is. */
export const knownRecipe = async (
  typed: Recipe,
  gravities: Part[] | undefined,
  asking: Asking,
): Promise<Known> => {
  const { words, book } = asking;
  const { materials } = await book.studio();
  const { recipe, strays } = withGravities(typed, gravities ?? []);
  const [stray] = strays;
  if (stray !== undefined)
    return { ok: false, reply: { kind: 'refusal', title: words.recipe.strayGravity(stray), data: {} } };
  const unknown = unknownMaterials(recipe, materials);
  if (unknown.length > 0) return { ok: false, reply: whatIs(unknown, asking) };
  const particleGravity = solidsOf(recipe, materials);
  if (particleGravity === undefined)
    return { ok: false, reply: { kind: 'refusal', title: words.recipe.oddRecipe, data: {} } };
  return {
    ok: true,
    recipe,
    particleGravity,
    materials,
    unexplained: unexplainedMaterials(recipe, materials),
  };
};
