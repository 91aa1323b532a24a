import { hazardsInName } from '../../glaze/materials/hazardWords.ts';
import { findMaterial, type Material } from '../../glaze/materials/materials.ts';
import type { MaterialCaution } from '../../glaze/materials/materialTable.ts';
import { gravity } from '../../glaze/units.ts';
import { definedOnly } from '../../definedOnly.ts';
import { normalizedName } from '../../text/normalizedName.ts';
import type { StudioMaterial } from './studioMaterial.ts';

/** What a keeper says of a material. */
export interface MaterialSaid {
  name: string;
  like: Material | undefined;
  hazards: readonly MaterialCaution[] | undefined;
  soluble: boolean | undefined;
  particleGravity: number | undefined;
}

export type Described =
  | { kind: 'missing'; what: 'hazards' | 'soluble' | 'gravity' }
  /** `gone`: hazards that were known of it before, and that this leaves out. */
  | { kind: 'described'; material: StudioMaterial; gone: MaterialCaution[] };

/**
 * A material for the whole studio. Its hazards are those that were said, those of what it is like, those that its name
 * tells, and those that the table has of that name: saying less takes none of these away.
 */
export const describeMaterial = (
  { name, like, hazards, soluble, particleGravity }: MaterialSaid,
  own: readonly StudioMaterial[],
): Described => {
  const grains = particleGravity ?? like?.gravity;
  // Without a similar material nothing may be guessed: ask for the hazards first.
  if (!like && hazards === undefined) return { kind: 'missing', what: 'hazards' };
  if (!like && soluble === undefined) return { kind: 'missing', what: 'soluble' };
  if (grains === undefined) return { kind: 'missing', what: 'gravity' };
  const cautions = [
    ...new Set<MaterialCaution>([
      ...(like?.cautions ?? []).filter((one) => one !== 'soluble' || soluble !== false),
      ...(hazards ?? []),
      ...(soluble === true ? (['soluble'] as const) : []),
      ...hazardsInName(name),
      ...(findMaterial(name)?.cautions ?? []),
    ]),
  ];
  const before = own.find((one) => normalizedName(one.name) === normalizedName(name));
  const gone = (before?.cautions ?? []).filter((one) => !cautions.includes(one) && one !== 'soluble');
  const material = { name, ...definedOnly({ like: like?.id }), gravity: gravity(grains), cautions };
  return { kind: 'described', material, gone };
};
