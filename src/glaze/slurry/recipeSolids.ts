import { firstOutside, refused, valid, type Checked } from '../checked.ts';
import { solidsGravityRange } from './slurry.ts';
import { gravity, type Gravity } from '../units.ts';

/**
 * Solids gravity of a whole recipe from those of its materials.
 * @formula 1/s = Σwᵢ/sᵢ: wᵢ mass fractions, here any amounts by weight, sᵢ solids gravities
 * @param parts amount of each material, by weight, zero or more, and its solids gravity
 * @returns solids gravity of the mixed powder, never rounded
 * @range at least one part, amounts 0 to 10⁹ and not all 0, gravities 1.1 to 12; outside is refused
 * @source derived: volumes of grains add
 * @example recipeSolidsGravity([{ amount: 75, gravity: gravity(2.5) }, { amount: 25, gravity: gravity(5) }]) //=> { ok: true, value: 2.857 }
 */
export const recipeSolidsGravity = (
  parts: readonly { amount: number; gravity: Gravity }[],
): Checked<Gravity> => {
  let amount = 0;
  let space = 0;
  for (const part of parts) {
    const outside = firstOutside(
      ['amount', part.amount, 0, 1e9],
      ['solids gravity', part.gravity, solidsGravityRange.low, solidsGravityRange.high],
    );
    if (outside) return outside;
    amount += part.amount;
    space += part.amount / part.gravity;
  }
  return amount > 0 ? valid(gravity(amount / space)) : refused('amount', amount, 0, 1e9);
};
