import { present } from '../../present.ts';
import { pressToEdit } from '../../contract/replyParts.ts';
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
import { refusal, type Action, type Asking, type Reply } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';
import type { Words } from '../../words/words.ts';
import type { Part } from '../../parse/readRecipe.ts';

type Known =
  | {
      ok: true;
      recipe: Recipe;
      particleGravity: Gravity;
      materials: readonly StudioMaterial[];
      /** Materials of which only the gravity is known. */
      unexplained: string[];
    }
  | { ok: false; reply: Reply };

/** One form for the one that is unknown, or one list for all of them; then the recipe goes on. */
const describing = (unknown: readonly string[], then: string, { recipe: w }: Words): Action => {
  const [only, ...others] = unknown;
  return only !== undefined && others.length === 0
    ? pressToEdit(w.sayWhat(only), 'studio material', { name: only, then })
    : pressToEdit(w.sayAll, 'studio materials', {
        list: unknown.map((name) => `${name}: like `).join('; '),
        then,
      });
};

/** Asks what a material is, rather than for its gravity: a keeper answers once, for all recipes. */
const whatIs = (unknown: readonly string[], path: readonly string[], asking: Asking): Reply => {
  const { words, role, typed } = asking;
  const w = words.recipe;
  const hazards = unknown.map((material) => ({ material, hazards: hazardsInName(material) }));
  return {
    kind: 'refusal',
    title: w.unknownMaterials([...unknown]),
    cautions: hazards.flatMap((one) =>
      one.hazards.map((hazard) => words.batch.materialCaution(hazard, [one.material])),
    ),
    reasons: present([role !== 'keeper' && w.askKeeper, w.whyAsked, w.whyGravity]),
    actions: role === 'keeper' ? [describing(unknown, printLine(path, typed), words)] : [],
    data: {
      unknownMaterials: [...unknown],
      hazards: Object.fromEntries(hazards.map((one) => [one.material, one.hazards])),
    },
  };
};

/** A recipe with the particle gravity of every material; otherwise the question what a material is. */
export const knownRecipe = async (
  typed: Recipe,
  gravities: Part[] | undefined,
  path: readonly string[],
  asking: Asking,
): Promise<Known> => {
  const { words, book } = asking;
  const { materials } = await book.studio();
  const { recipe, strays } = withGravities(typed, gravities ?? []);
  const [stray] = strays;
  if (stray !== undefined) return { ok: false, reply: refusal(words.recipe.strayGravity(stray)) };
  const unknown = unknownMaterials(recipe, materials);
  if (unknown.length > 0) return { ok: false, reply: whatIs(unknown, path, asking) };
  const particleGravity = solidsOf(recipe, materials);
  if (particleGravity === undefined) return { ok: false, reply: refusal(words.recipe.oddRecipe) };
  return {
    ok: true,
    recipe,
    particleGravity,
    materials,
    unexplained: unexplainedMaterials(recipe, materials),
  };
};
