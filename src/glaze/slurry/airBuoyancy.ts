import { firstOutside, valid, type Checked } from '../checked.ts';
import { density, type Density } from '../units.ts';

/** Conventional air and weights of a balance. OIML D 28. */
const conventionalAir: Density = density(1.2);
const conventionalWeights: Density = density(8000);

/**
 * True density of a slurry from what a balance in air shows, since air lifts the slurry more than the weights.
 * @formula ρ = ρ′(1 − ρa/ρm) + ρa: ρ′ shown mass over volume, ρa air, ρm weights
 * @param apparent ρ′, kg/m³ · @param air ρa, 1.2 when left out · @param weights ρm, 8000 when left out, kg/m³
 * @returns density, kg/m³, never rounded
 * @range ρ′ 500 to 12 000, ρa 0.8 to 1.4, ρm 2000 to 22 000 kg/m³; outside is refused
 * @source OIML D 28, conventional mass (from memory)
 * @example densityInVacuum({ apparent: density(1475) }) //=> { ok: true, value: 1475.979 }
 */
export const densityInVacuum = ({
  apparent,
  air = conventionalAir,
  weights = conventionalWeights,
}: { apparent: Density } & Partial<Record<'air' | 'weights', Density>>): Checked<Density> =>
  firstOutside(
    ['apparent density', apparent, 500, 12_000],
    ['density of air', air, 0.8, 1.4],
    ['density of the weights', weights, 2000, 22_000],
  ) ?? valid(density(apparent * (1 - air / weights) + air));
