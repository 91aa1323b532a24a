import { firstOutside, refused, valid, type Checked } from '../checked.ts';
import { nominalWater, solidsGravityRange } from './slurry.ts';
import {
  grams,
  gravity,
  millilitres,
  type Density,
  type Grams,
  type Gravity,
  type Millilitres,
} from '../units.ts';

/** More than any vessel of a studio holds: a thousand cubic metres. */
const largest = 1e9;

interface Change {
  volume: Millilitres;
  from: Gravity;
  to: Gravity;
}

/**
 * Water that brings a bucket's gravity down to a wanted gravity.
 * @formula ΔV = V(γ1 − γ2)/(γ2 − 1)
 * @param volume V, glaze in the bucket, ml · @param from γ1, its gravity · @param to γ2, the wanted gravity, not above γ1
 * @returns water to pour in, ml, never rounded
 * @range V 0 to 10⁹ ml, γ1 up to 12, γ2 above 1, up to γ1; outside is refused
 * @source derived: volumes add, mass is kept; the dilution formula of Lapeyrouse, Formulas and Calculations for
 *   Drilling, Production and Workover
 * @example waterToAdd({ volume: millilitres(10000), from: gravity(1.55), to: gravity(1.45) }) //=> { ok: true, value: 2222.22 }
 */
export const waterToAdd = ({ volume, from, to }: Change): Checked<Millilitres> =>
  firstOutside(
    ['volume', volume, 0, largest],
    ['gravity', from, 1, solidsGravityRange.high],
    ['wanted gravity', to, 1, from],
  ) ??
  (to > 1 ? valid(millilitres((volume * (from - to)) / (to - 1))) : refused('wanted gravity', to, 1, from));

/**
 * Clear water to take off the top of a settled bucket, to bring its gravity up to a wanted gravity.
 * @formula ΔV = V(γ2 − γ1)/(γ2 − 1)
 * @param volume V, glaze and clear water in the bucket, ml · @param from γ1, gravity when stirred
 * @param to γ2, the wanted gravity, not below γ1
 * @returns clear water to draw off, ml, never rounded
 * @range V 0 to 10⁹ ml, γ1 1 or more, γ2 above 1, γ1 to 12; outside is refused
 * @source derived: volumes add, mass is kept
 * @example waterToDrawOff({ volume: millilitres(12000), from: gravity(1.36), to: gravity(1.46) }) //=> { ok: true, value: 2608.696 }
 */
export const waterToDrawOff = ({ volume, from, to }: Change): Checked<Millilitres> =>
  firstOutside(
    ['volume', volume, 0, largest],
    ['gravity', from, 1, solidsGravityRange.high],
    ['wanted gravity', to, from, solidsGravityRange.high],
  ) ??
  (to > 1
    ? valid(millilitres((volume * (to - from)) / (to - 1)))
    : refused('wanted gravity', to, from, solidsGravityRange.high));

/** Refuses a gravity that no slurry of these solids has: thinner than water, or all powder. */
const outsideSolids = (quantity: string, value: number, particleGravity: Gravity) =>
  firstOutside(['solids gravity', particleGravity, solidsGravityRange.low, solidsGravityRange.high]) ??
  (value >= 1 && value < particleGravity ? undefined : refused(quantity, value, 1, particleGravity));

/**
 * Dry batch that brings a bucket's gravity up to a wanted gravity.
 * @formula Δm = V·ρw·s(γ2 − γ1)/(s − γ2)
 * @param volume V, glaze in the bucket, ml · @param from γ1, its gravity · @param to γ2, the wanted gravity, not below γ1
 * @param particleGravity s, gravity of the grains · @param water ρw, 1000 kg/m³ when left out
 * @returns dry powder to stir in, g, never rounded
 * @range V 0 to 10⁹ ml, s 1.1 to 12, γ1 1 or more, γ2 γ1 to under s, ρw 900 to 1100 kg/m³; outside is refused
 * @source derived: volumes add, mass is kept; the weight-up formula of Lapeyrouse
 * @example powderToAdd({ volume: millilitres(10000), from: gravity(1.38), to: gravity(1.46), particleGravity: gravity(2.65) }) //=> { ok: true, value: 1781.51 }
 */
export const powderToAdd = ({
  volume,
  from,
  to,
  particleGravity,
  water = nominalWater,
}: Change & { particleGravity: Gravity; water?: Density }): Checked<Grams> =>
  outsideSolids('wanted gravity', to, particleGravity) ??
  firstOutside(
    ['volume', volume, 0, largest],
    ['gravity', from, 1, to],
    ['density of water', water, 900, 1100],
  ) ??
  valid(grams((((volume * water) / 1000) * particleGravity * (to - from)) / (particleGravity - to)));

interface Glaze {
  volume: Millilitres;
  gravity: Gravity;
}

/**
 * Gravity of two buckets poured together.
 * @formula γ = (V1γ1 + V2γ2)/(V1 + V2)
 * @param first, second volume, ml, and gravity of each
 * @returns gravity of the blend, never rounded
 * @range volumes 0 to 10⁹ ml and not both 0, gravities 0.9 to 12; outside is refused
 * @source derived: volumes add, mass is kept; Lapeyrouse, mixing fluids of different densities
 * @example blend({ first: { volume: millilitres(400), gravity: gravity(1.3) }, second: { volume: millilitres(400), gravity: gravity(1.5) } }) //=> { ok: true, value: 1.4 }
 */
export const blend = ({ first, second }: Record<'first' | 'second', Glaze>): Checked<Gravity> => {
  const volume = first.volume + second.volume;
  return (
    firstOutside(
      ['first volume', first.volume, 0, largest],
      ['second volume', second.volume, 0, largest],
      ['volume', volume, Number.MIN_VALUE, 2 * largest],
      ['first gravity', first.gravity, 0.9, solidsGravityRange.high],
      ['second gravity', second.gravity, 0.9, solidsGravityRange.high],
    ) ?? valid(gravity((first.volume * first.gravity + second.volume * second.gravity) / volume))
  );
};

/**
 * How much of a second bucket brings a first one to a wanted gravity.
 * @formula V2 = V1(γ1 − γ)/(γ − γ2)
 * @param first volume, ml, and gravity · @param secondGravity γ2 · @param target γ, between the two, never γ2 itself
 * @returns volume of the second to pour in, ml, never rounded
 * @range V1 0 to 10⁹ ml, gravities 0.9 to 12, target from γ1 to short of γ2; outside is refused
 * @source derived: volumes add, mass is kept
 * @example secondForBlend({ first: { volume: millilitres(10000), gravity: gravity(1.62) }, secondGravity: gravity(1.3), target: gravity(1.5) }) //=> { ok: true, value: 6000 }
 */
export const secondForBlend = ({
  first,
  secondGravity,
  target,
}: { first: Glaze } & Record<'secondGravity' | 'target', Gravity>): Checked<Millilitres> => {
  const low = Math.min(first.gravity, secondGravity);
  const high = Math.max(first.gravity, secondGravity);
  const outside = firstOutside(
    ['first volume', first.volume, 0, largest],
    ['first gravity', first.gravity, 0.9, solidsGravityRange.high],
    ['second gravity', secondGravity, 0.9, solidsGravityRange.high],
    ['wanted gravity', target, low, high],
  );
  if (outside) return outside;
  if (target === secondGravity) return refused('wanted gravity', target, low, high);
  return valid(millilitres((first.volume * (first.gravity - target)) / (target - secondGravity)));
};

/**
 * How a wanted volume divides between a first bucket and what is poured into it: a second bucket, water (gravity 1) or
 * dry powder (its solids gravity).
 * @formula V2 = V(γ − γ1)/(γ2 − γ1), V1 = V − V2: lever rule
 * @param volume V, ml after mixing · @param firstGravity γ1 · @param secondGravity γ2, not γ1 · @param target γ, between
 * @returns ml of each, by volume of the grains when the second is powder, never rounded
 * @range V 0 to 10⁹ ml, gravities 0.9 to 12, target from γ1 to γ2; outside is refused
 * @source derived: volumes add, mass is kept; starting volume of Lapeyrouse
 * @example partsForBlend({ volume: millilitres(300), firstGravity: gravity(1.1), secondGravity: gravity(1.4), target: gravity(1.15) }) //=> { ok: true, value: { first: 250, second: 50 } }
 */
export const partsForBlend = ({
  volume,
  firstGravity,
  secondGravity,
  target,
}: { volume: Millilitres } & Record<'firstGravity' | 'secondGravity' | 'target', Gravity>): Checked<
  Record<'first' | 'second', Millilitres>
> => {
  const low = Math.min(firstGravity, secondGravity);
  const high = Math.max(firstGravity, secondGravity);
  const outside = firstOutside(
    ['volume', volume, 0, largest],
    ['first gravity', firstGravity, 0.9, solidsGravityRange.high],
    ['second gravity', secondGravity, 0.9, solidsGravityRange.high],
    ['wanted gravity', target, low, high],
  );
  if (outside) return outside;
  if (firstGravity === secondGravity) return refused('second gravity', secondGravity, low, high);
  const second = (volume * (target - firstGravity)) / (secondGravity - firstGravity);
  return valid({ first: millilitres(volume - second), second: millilitres(second) });
};
