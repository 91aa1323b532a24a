import { materialTable, type MaterialCaution } from './materialTable.ts';
import { gravity, type Gravity } from '../units.ts';
import { normalizedName } from '../../text/normalizedName.ts';

/** A glaze material, with the gravity of its grains and the range over which lots vary. */
export interface Material {
  id: string;
  name: string;
  aliases: readonly string[];
  gravity: Gravity;
  low: Gravity;
  high: Gravity;
  source: string;
  cautions: readonly MaterialCaution[];
}

export const materials: readonly Material[] = materialTable.map(
  ([id, aliases, value, low, high, source, ...cautions]) => ({
    id,
    name: id.replaceAll('-', ' '),
    aliases: aliases === '' ? [] : aliases.split(', '),
    gravity: gravity(value),
    low: gravity(low),
    high: gravity(high),
    source,
    cautions,
  }),
);

/**
 * One spelling for a material's name: no case, no hyphens, British forms. The words are sorted, because catalogues
 * turn them round.
 */
const spelling = (name: string) =>
  normalizedName(name)
    .replaceAll('sulph', 'sulf')
    .replaceAll('aluminum', 'aluminium')
    .replaceAll('felspar', 'feldspar')
    .split(' ')
    .sort()
    .join(' ');

const byName = new Map(
  materials.flatMap((material) =>
    [material.id, ...material.aliases].map((name) => [spelling(name), material] as const),
  ),
);

/**
 * The material that a member means by a name, or undefined when there is none: nothing is guessed.
 * @example findMaterial('China Clay')?.id //=> 'kaolin'
 */
export const findMaterial = (name: string): Material | undefined => byName.get(spelling(name));
