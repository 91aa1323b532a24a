import { findMaterial, materials, type Material } from '../../glaze/materials/materials.ts';
import { materialCautions, type MaterialCaution } from '../../glaze/materials/materialTable.ts';
import type { Kind } from '../contract.ts';
import { several } from './picks.ts';

/** A material of the table, by any of its names. */
export const material: Kind<Material> = {
  control: 'text',
  example: 'kaolin',
  read(typed, { words }) {
    const found = findMaterial(typed);
    return found ? { ok: true, value: found } : { ok: false, why: words.recipe.noMaterial(typed) };
  },
  suggest: async (typed) =>
    materials
      .filter(({ name, aliases }) =>
        [name, ...aliases].some((one) => one.includes(typed.trim().toLowerCase())),
      )
      .map(({ name }) => ({ name, value: name })),
};

const severalHazards = several(materialCautions, {
  'silica-dust': 'silica dust',
  silica: 'silica dust',
  dust: 'silica dust',
});

/** All hazards of a material, or `none`. */
export const hazards: Kind<MaterialCaution[]> = {
  ...severalHazards,
  example: 'barium, toxic',
  read: (typed, asking) =>
    /^(?:none|nothing|no)$/i.test(typed.trim())
      ? { ok: true, value: [] }
      : severalHazards.read(typed, asking),
};
