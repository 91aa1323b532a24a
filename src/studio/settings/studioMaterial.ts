import { hazardsInName } from '../../glaze/materials/hazardWords.ts';
import { findMaterial } from '../../glaze/materials/materials.ts';
import type { MaterialCaution } from '../../glaze/materials/materialTable.ts';
import type { Gravity } from '../../glaze/units.ts';
import { normalizedName } from '../normalizedName.ts';

/** A material that no table has, as a keeper has said once for the whole studio what it is. */
export interface StudioMaterial {
  name: string;
  /** The material of the table that it is like, by its id. */
  like?: string;
  gravity: Gravity;
  /** With those of what it is like. */
  cautions: MaterialCaution[];
}

export interface KnownMaterial {
  gravity: Gravity;
  cautions: readonly MaterialCaution[];
}

/** A material by its name: as the studio knows it, else as the table does. */
export const knownMaterial = (name: string, own: readonly StudioMaterial[]): KnownMaterial | undefined =>
  own.find((one) => normalizedName(one.name) === normalizedName(name)) ?? findMaterial(name);

/** What asks for care with a material: as it is known, and as its name says. */
export const materialCautions = (name: string, own: readonly StudioMaterial[]): MaterialCaution[] => [
  ...new Set([...(knownMaterial(name, own)?.cautions ?? []), ...hazardsInName(name)]),
];
