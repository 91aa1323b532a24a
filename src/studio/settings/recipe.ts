import type { MaterialCaution } from '../../glaze/materials/materialTable.ts';
import { recipeSolidsGravity } from '../../glaze/slurry/recipeSolids.ts';
import { knownMaterial, materialCautions, type StudioMaterial } from './studioMaterial.ts';
import { gravity, type Gravity } from '../../glaze/units.ts';
import { normalizedText } from '../../text/normalizedText.ts';

export interface RecipeLine {
  material: string;
  /** In per cent or in parts; additions in the same measure, on top of the rest. */
  amount: number;
  addition: boolean;
  /** Gravity of its grains, if somebody gave it; it overrides the table's. */
  gravity?: Gravity;
}

export interface Recipe {
  lines: RecipeLine[];
}

/** A recipe that the studio saved under a name. */
export interface StoredRecipe extends Recipe {
  name: string;
}

type OwnMaterials = readonly StudioMaterial[];

const gravityOfLine = ({ material, gravity: said }: RecipeLine, own: OwnMaterials): Gravity | undefined =>
  said ?? knownMaterial(material, own)?.gravity;

/** Materials of unknown gravity. */
export const unknownMaterials = ({ lines }: Recipe, own: OwnMaterials): string[] =>
  lines.filter((line) => gravityOfLine(line, own) === undefined).map(({ material }) => material);

/** Materials whose gravity somebody gave, and which are in no table. */
export const unexplainedMaterials = ({ lines }: Recipe, own: OwnMaterials): string[] =>
  lines.flatMap(({ material }) => (knownMaterial(material, own) ? [] : [material]));

/** Gravity of the mixed powder; undefined while one material's is unknown. */
export const solidsOf = ({ lines }: Recipe, known: OwnMaterials): Gravity | undefined => {
  const parts = lines.flatMap((line) => {
    const own = gravityOfLine(line, known);
    return own === undefined ? [] : [{ amount: line.amount, gravity: own }];
  });
  const found = parts.length === lines.length ? recipeSolidsGravity(parts) : undefined;
  return found?.ok ? found.value : undefined;
};

/** Hazards of its materials, and those that behave in water unlike powder. */
export const recipeCautions = (
  { lines }: Recipe,
  own: OwnMaterials,
): { caution: MaterialCaution; materials: string[] }[] => {
  const found = new Map<MaterialCaution, string[]>();
  for (const { material } of lines)
    for (const caution of materialCautions(material, own))
      found.set(caution, [...(found.get(caution) ?? []), material]);
  return [...found].map(([caution, materials]) => ({ caution, materials }));
};

/** The recipe with the gravities that were given for its materials, and the names that are not in it. */
export const withGravities = (
  recipe: Recipe,
  said: readonly { material: string; amount: number }[],
): { recipe: Recipe; strays: string[] } => {
  const isOf = (name: string) => (one: { material: string }) =>
    normalizedText(one.material) === normalizedText(name);
  const lines = recipe.lines.map((line) => {
    const own = said.find(isOf(line.material));
    return own ? { ...line, gravity: gravity(own.amount) } : line;
  });
  const strays = said.map(({ material }) => material).filter((name) => !lines.some(isOf(name)));
  return { recipe: { ...recipe, lines }, strays };
};

/** What a recipe in per cent adds up to when a part of it seems to be missing; undefined for parts, or when it fits. */
export const oddSum = ({ lines }: Recipe): number | undefined => {
  const sum = (some: readonly RecipeLine[]) => some.reduce((total, { amount }) => total + amount, 0);
  const base = sum(lines.filter(({ addition }) => !addition));
  const isWhole = (total: number) => Math.abs(total - 100) <= 0.5;
  // Outside this it is counted in parts (common practice).
  return isWhole(base) || isWhole(sum(lines)) || base < 85 || base > 115
    ? undefined
    : Number(base.toPrecision(6));
};
