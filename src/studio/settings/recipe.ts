import type { MaterialCaution } from '../../glaze/materials/materialTable.ts';
import { recipeSolidsGravity } from '../../glaze/slurry/recipeSolids.ts';
import { knownMaterial, materialCautions, type StudioMaterial } from './studioMaterial.ts';
import { gravity, type Gravity } from '../../glaze/units.ts';

export interface RecipeLine {
  material: string;
  /** In per cent or in parts; an addition in the same measure, over and above them. */
  amount: number;
  addition: boolean;
  /** Gravity of its grains, where somebody said it: it goes before the table's. */
  gravity?: Gravity;
}

export interface Recipe {
  lines: RecipeLine[];
}

/** One that the studio keeps under a name. */
export interface StoredRecipe extends Recipe {
  name: string;
}

type Own = readonly StudioMaterial[];

const gravityOfLine = ({ material, gravity: said }: RecipeLine, own: Own): Gravity | undefined =>
  said ?? knownMaterial(material, own)?.gravity;

/** Materials whose grains' gravity nobody knows. */
export const unknownMaterials = ({ lines }: Recipe, own: Own): string[] =>
  lines.filter((line) => gravityOfLine(line, own) === undefined).map(({ material }) => material);

/** Materials of which somebody has said the gravity, and nobody what they are. */
export const unexplainedMaterials = ({ lines }: Recipe, own: Own): string[] =>
  lines.flatMap(({ material }) => (knownMaterial(material, own) ? [] : [material]));

/** Solids gravity of the whole mix; undefined while a material's is not known. */
export const solidsOf = ({ lines }: Recipe, known: Own): Gravity | undefined => {
  const parts: { amount: number; gravity: Gravity }[] = [];
  for (const line of lines) {
    const own = gravityOfLine(line, known);
    if (own === undefined) return undefined;
    parts.push({ amount: line.amount, gravity: own });
  }
  const found = recipeSolidsGravity(parts);
  return found.ok ? found.value : undefined;
};

/** What in it can hurt somebody, or behaves unlike powder in water. */
export const recipeCautions = (
  { lines }: Recipe,
  own: Own,
): { caution: MaterialCaution; materials: string[] }[] => {
  const found = new Map<MaterialCaution, string[]>();
  for (const { material } of lines)
    for (const caution of materialCautions(material, own))
      found.set(caution, [...(found.get(caution) ?? []), material]);
  return [...found].map(([caution, materials]) => ({ caution, materials }));
};

const folded = (name: string) => name.normalize('NFKC').trim().toLowerCase();

/** The recipe with gravities said for materials by name; the names that are not in it are handed back. */
export const withGravities = (
  recipe: Recipe,
  said: readonly { material: string; amount: number }[],
): { recipe: Recipe; strays: string[] } => ({
  recipe: {
    ...recipe,
    lines: recipe.lines.map((line) => {
      const own = said.find(({ material }) => folded(material) === folded(line.material));
      return own ? { ...line, gravity: gravity(own.amount) } : line;
    }),
  },
  strays: said
    .filter(({ material }) => !recipe.lines.some((line) => folded(line.material) === folded(material)))
    .map(({ material }) => material),
});
