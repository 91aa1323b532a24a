import { findMaterial } from '../../glaze/materials/materials.ts';
import type { MaterialCaution } from '../../glaze/materials/materialTable.ts';
import { normalizedName } from '../../text/normalizedName.ts';
import { materialCautions, type StudioMaterial } from '../settings/studioMaterial.ts';
import type { WeighedMaterial } from './scaleRecipe.ts';

/** What is done with a batch's materials, in order: all of it common practice. */
export interface WeighingOrder {
  /** Goes into warm water first. */
  dissolve: string[];
  /** Swells: it is mixed dry into another powder, or it makes lumps. */
  premix: string[];
  /** Clay that comes in lumps soaks first. */
  slake: string[];
  /** The rest, the largest first. */
  weigh: string[];
  /** Hazardous ones, last and alone. */
  last: string[];
}

const swelling = new Set(['bentonite', 'hectorite']);
const lumpy = new Set(['slip-clay', 'red-earthenware-clay', 'stoneware-clay']);
/** Not what gloves are for, or in nearly every powder. */
const usual: ReadonlySet<MaterialCaution> = new Set(['silica dust', 'soluble', 'boron']);

export const weighingOrder = (
  materials: readonly WeighedMaterial[],
  own: readonly StudioMaterial[],
): WeighingOrder => {
  const order: WeighingOrder = { dissolve: [], premix: [], slake: [], weigh: [], last: [] };
  const sorted = materials.toSorted((a, b) => Number(a.addition) - Number(b.addition) || b.grams - a.grams);
  for (const { material } of sorted) {
    const cautions = materialCautions(material, own);
    const mine = own.find(({ name }) => normalizedName(name) === normalizedName(material));
    const id = mine ? mine.like : findMaterial(material)?.id;
    const to = cautions.includes('soluble')
      ? order.dissolve
      : id !== undefined && swelling.has(id)
        ? order.premix
        : id !== undefined && lumpy.has(id)
          ? order.slake
          : cautions.some((one) => !usual.has(one))
            ? order.last
            : order.weigh;
    if (!to.includes(material)) to.push(material);
  }
  return order;
};
