import { normalCdf } from '../../glaze/statistics/normal.ts';
import type { Estimate } from '../contents/contents.ts';

/** The accepted chance of passing the far edge. */
const mostChance = 0.05;
const steps = 24;
const reach = 4.5;

/**
 * The chance that an amount takes a bucket past the far edge of its window, when volume and gravity are uncertain.
 * @formula P(V·d < a·k): V volume, d distance in gravity to the far edge, a amount, k what a unit of it does at the edge
 * @param volume ml and standard deviation · @param distance gravity to the far edge and standard deviation ·
 *   @param amount ml or g · @param perAmount gravity·ml that one unit of the amount uses up
 * @returns probability, 0 to 1
 * @range any; a volume or a distance below zero counts as passed
 * @source derived: JCGM 101:2008 propagation of two normal inputs, by the trapezoidal rule over ±4.5 σ of the one known better
 */
export const chanceOfPassing = (
  volume: Estimate<number>,
  distance: Estimate<number>,
  amount: number,
  perAmount: number,
): number => {
  const used = amount * perAmount;
  // Integrates over the quantity that is known better: then the other's probability changes little between steps.
  const volumeKnownBetter = volume.sd * Math.abs(distance.value) < distance.sd * volume.value;
  const [summed, other] = volumeKnownBetter ? [volume, distance] : [distance, volume];
  let passing = 0;
  let weights = 0;
  for (let i = 0; i <= steps; i++) {
    const z = -reach + (2 * reach * i) / steps;
    const weight = Math.exp(-0.5 * z * z);
    const one = summed.value + z * summed.sd;
    const needed = one > 0 ? used / one : Infinity;
    passing +=
      weight * (other.sd > 0 ? normalCdf((needed - other.value) / other.sd) : Number(needed > other.value));
    weights += weight;
  }
  return passing / weights;
};

/** The wanted amount, or the largest with a chance of at most 5 % of passing the far edge. */
export const safeAmount = (
  wanted: number,
  volume: Estimate<number>,
  distance: Estimate<number>,
  perAmount: number,
): number => {
  const chance = (amount: number) => chanceOfPassing(volume, distance, amount, perAmount);
  if (chance(wanted) <= mostChance) return wanted;
  let [low, high] = [0, wanted];
  if (chance(low) > mostChance) return 0;
  while (high - low > wanted * 1e-3) {
    const middle = (low + high) / 2;
    if (chance(middle) <= mostChance) low = middle;
    else high = middle;
  }
  return low;
};
