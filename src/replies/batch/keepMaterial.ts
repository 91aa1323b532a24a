import type { Logging } from '../../contract/contract.ts';
import type { StudioMaterial } from '../../studio/settings/studioMaterial.ts';
import { normalizedName } from '../../text/normalizedName.ts';
import { markBuckets } from './markBuckets.ts';

/** Teaches the studio a material, and marks the buckets whose recipes use it with its hazards. */
export const keepMaterial = async (
  material: StudioMaterial,
  logged: Parameters<Logging['book']['logStudio']>[1],
  context: Logging,
) => {
  const { entry } = await context.book.logStudio({ kind: 'material', material }, logged);
  const name = normalizedName(material.name);
  const marked = await markBuckets(
    ({ lines }) => lines.some((line) => normalizedName(line.material) === name),
    logged,
    context,
  );
  return { entry, marked };
};
