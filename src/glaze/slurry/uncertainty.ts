import { coverage95 } from '../statistics/normal.ts';
import { firstOutside, valid, type Checked } from '../checked.ts';
import { weighableGravity } from './gravityByWeighing.ts';
import { dryContent } from './slurry.ts';
import {
  gramsPerLitre,
  gravity,
  millilitres,
  type Grams,
  type GramsPerLitre,
  type Gravity,
  type Millilitres,
} from '../units.ts';

/**
 * Standard uncertainty of a value known only to lie within ±a, with every value equally likely: a scale's step, a
 * mark's width.
 * @formula u = a/√3
 * @param halfWidth a, in the value's own unit, zero or more
 * @returns one standard deviation, same unit, never rounded
 * @range any
 * @source JCGM 100:2008, 4.3.7 (from memory)
 * @example rectangular(0.5) //=> 0.288675
 */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/**
 * Standard uncertainty of a value within ±a that is likelier near the middle: a level judged by eye.
 * @formula u = a/√6
 * @param halfWidth a, in the value's own unit, zero or more
 * @returns one standard deviation, same unit, never rounded
 * @range any
 * @source JCGM 100:2008, 4.3.9 (from memory)
 * @example triangular(0.5) //=> 0.204124
 */
export const triangular = (halfWidth: number): number => halfWidth / Math.sqrt(6);

/**
 * Combined standard uncertainty of independent parts.
 * @formula u = √Σuᵢ²
 * @param parts standard uncertainties, all in one unit
 * @returns one standard deviation, same unit, never rounded
 * @range any
 * @source JCGM 100:2008, eq. 10, with every sensitivity 1
 * @example combine(3, 4) //=> 5
 */
export const combine = (...parts: number[]): number => Math.hypot(...parts);

/**
 * Half the width of the 95 % interval round a value.
 * @formula U = 1.96·u
 * @param standard one standard deviation, any unit
 * @returns half-width, same unit, never rounded
 * @range any
 * @source JCGM 100:2008, 6.2 and G.1.3 (from memory)
 * @example expanded95(0.01) //=> 0.0196
 */
export const expanded95 = (standard: number): number => coverage95 * standard;

/** How much a cup that was filled to the brim and wiped may hold above or below its volume. *Common practice.* */
export const brimHalfWidth: Millilitres = millilitres(1);

export interface WeighedGravity {
  gross: Grams;
  tare: Grams;
  water: Grams;
  scaleStep: Grams;
  fillHalfWidth: Millilitres;
  waterScaleStep?: Grams;
}

/**
 * Uncertainty of a gravity by weighing, from the vessel and the scale.
 * @formula γ = m/M, m = gross − tare; u²/γ² = (u²(gross) + u²(tare))/m² + (u²(fill) + u²(M))/M², every term rectangular
 * @param gross, tare weights with and without slurry, g · @param water M, the water that fills the vessel, g
 * @param scaleStep smallest step that the scale shows, g · @param fillHalfWidth how far off full, either way, ml
 * @param waterScaleStep step of the scale that weighed the water, full and empty; left out when the volume is certified
 * @returns gravity and its standard uncertainty, same unit, never rounded
 * @range gross 0 to 10⁶ g, tare 0 to gross, water 1 to 100 000 g, gravity 0.9 to 3, steps 0 to 100 g, fill 0 to half the
 *   vessel; outside is refused
 * @source JCGM 100:2008, eq. 10 and 4.3.7
 * @example weighedGravityUncertainty({ gross: grams(95), tare: grams(20), water: grams(50), scaleStep: grams(1), fillHalfWidth: millilitres(0.5) }) //=> { ok: true, value: { gravity: 1.5, standard: 0.0119 } }
 */
export const weighedGravityUncertainty = ({
  gross,
  tare,
  water,
  scaleStep,
  fillHalfWidth,
  waterScaleStep,
}: WeighedGravity): Checked<{ gravity: Gravity; standard: number }> => {
  const slurry = gross - tare;
  const outside = firstOutside(
    ['water', water, 1, 1e5],
    ['gross weight', gross, 0, 1e6],
    ['tare', tare, 0, gross],
    ['gravity', slurry / water, weighableGravity.low, weighableGravity.high],
    ['scale step', scaleStep, 0, 100],
    ['fill', fillHalfWidth, 0, water / 2],
    ['scale step at calibration', waterScaleStep ?? 0, 0, 100],
  );
  if (outside) return outside;
  const weighing = rectangular(scaleStep / 2);
  const calibration = rectangular((waterScaleStep ?? 0) / 2);
  const relative = combine(
    weighing / slurry,
    weighing / slurry,
    rectangular(fillHalfWidth) / water,
    calibration / water,
    calibration / water,
  );
  const value = slurry / water;
  return valid({ gravity: gravity(value), standard: value * relative });
};

/**
 * Uncertainty of a dry content, from those of the two gravities.
 * @formula u²(W) = (ρw·s/(s − 1))²u²(γ) + (ρw(γ − 1)/(s − 1)²)²u²(s), ρw 1000 g/l
 * @param slurry gravity of the stirred slurry · @param slurryStandard its standard uncertainty
 * @param particleGravity gravity of the grains · @param solidsStandard its standard uncertainty
 * @returns dry content and its standard uncertainty, g/l, never rounded
 * @range as dryContent; uncertainties 0 to 1; outside is refused
 * @source JCGM 100:2008, eq. 10, on Brongniart's formula
 * @example dryContentUncertainty({ slurry: gravity(1.475), slurryStandard: 0.0042775, particleGravity: gravity(2.6), solidsStandard: rectangular(0.05) }) //=> { ok: true, value: { dry: 771.875, standard: 8.775 } }
 */
export const dryContentUncertainty = ({
  slurry,
  slurryStandard,
  particleGravity,
  solidsStandard,
}: {
  slurry: Gravity;
  slurryStandard: number;
  particleGravity: Gravity;
  solidsStandard: number;
}): Checked<{ dry: GramsPerLitre; standard: GramsPerLitre }> => {
  const dry = dryContent({ slurry, particleGravity });
  if (!dry.ok) return dry;
  const outside = firstOutside(
    ['uncertainty of the slurry gravity', slurryStandard, 0, 1],
    ['uncertainty of the solids gravity', solidsStandard, 0, 1],
  );
  if (outside) return outside;
  const standard = combine(
    ((1000 * particleGravity) / (particleGravity - 1)) * slurryStandard,
    ((1000 * (slurry - 1)) / (particleGravity - 1) ** 2) * solidsStandard,
  );
  return valid({ dry: dry.value, standard: gramsPerLitre(standard) });
};
