import { hazardsInName } from '../../glaze/materials/hazardWords.ts';
import { findMaterial } from '../../glaze/materials/materials.ts';
import type { MaterialCaution } from '../../glaze/materials/materialTable.ts';
import type { Gravity } from '../../glaze/units.ts';
import { normalizedName } from '../../text/normalizedName.ts';

/** A material that no table has, as a keeper described it for the whole studio. */
export interface StudioMaterial {
  name: string;
  /** The id of a similar material in the table. */
  like?: string;
  gravity: Gravity;
  /** Those of the similar material included. */
  cautions: MaterialCaution[];
}

export interface KnownMaterial {
  gravity: Gravity;
  cautions: readonly MaterialCaution[];
}

/** A material by its name: the studio's own, else the table's. */
export const knownMaterial = (name: string, own: readonly StudioMaterial[]): KnownMaterial | undefined =>
  own.find((one) => normalizedName(one.name) === normalizedName(name)) ?? findMaterial(name);

/** The cautions of a material: those that are known, and those that its name gives away. */
export const materialCautions = (name: string, own: readonly StudioMaterial[]): MaterialCaution[] => [
  ...new Set([...(knownMaterial(name, own)?.cautions ?? []), ...hazardsInName(name)]),
];
