import { type Component, ownPlaces, place } from './mixture.ts';
import { flowPerGravity } from './priors.ts';

/** Something of one gravity that went in; out when the litres are below zero. */
export interface Addition {
  gravity: number;
  litres: number;
  /** Of the litres. */
  sd: number;
}

/** However much is said to have come out, a fifth of the pail is left. */
const mostOut = -0.8;

/**
 * An account of a bucket after something went in: gravity, volume and flow with it, and how they vary together.
 * @formula δ = a·e^−v, o = 1 + δ: G' = (G + γδ)/o, v' = v + ln o, z' = z + k(G' − G); P' = JPJᵀ + s²qqᵀ, D = (γ − G)/o²,
 *   J = (1/o, −Dδ, 0), (0, 1/o, 0), (k(1/o − 1), −kDδ, 1), q = (De^−v, e^−v/o, kDe^−v); P'zz gains (G' − G)²·sd(k)²
 * @source balance of mass and of volume; JCGM 100:2008, eq. 13, for the spread
 */
export const withAdded = (one: Component, { gravity, litres, sd }: Addition): Component => {
  const size = one.mean.length;
  const mean = one.mean.slice();
  const [before = 0, volume = 0, flow = 0] = one.mean;
  const perLitre = Math.exp(-volume);
  const delta = Math.max(mostOut, litres * perLitre);
  // What is said to have come out beyond that is as unsure as the rest of it.
  const within = delta > litres * perLitre ? (sd * delta) / (litres * perLitre) : sd;
  const out = 1 + delta;
  const after = (before + gravity * delta) / out;
  const slope = (gravity - before) / (out * out);
  const k = flowPerGravity.value;
  mean[place.gravity] = after;
  mean[place.volume] = volume + Math.log(out);
  mean[place.flow] = flow + k * (after - before);

  const p = one.covariance.slice();
  const gg = 1 / out;
  const gv = -slope * delta;
  const zg = k * (1 / out - 1);
  const zv = -k * slope * delta;
  // Rows by J, then columns by it.
  for (let j = 0; j < size; j++) {
    const g = p[j] ?? 0;
    const v = p[size + j] ?? 0;
    const z = p[2 * size + j] ?? 0;
    p[j] = gg * g + gv * v;
    p[size + j] = gg * v;
    p[2 * size + j] = zg * g + zv * v + z;
  }
  for (let i = 0; i < size; i++) {
    const row = i * size;
    const g = p[row] ?? 0;
    const v = p[row + 1] ?? 0;
    const z = p[row + 2] ?? 0;
    p[row] = gg * g + gv * v;
    p[row + 1] = gg * v;
    p[row + 2] = zg * g + zv * v + z;
  }
  const along = [slope * perLitre, perLitre / out, k * slope * perLitre];
  // An addition does not change how far an instrument is off.
  for (let i = 0; i < ownPlaces; i++) {
    const part = within * within * (along[i] ?? 0);
    for (let j = 0; j < ownPlaces; j++) p[i * size + j] = (p[i * size + j] ?? 0) + part * (along[j] ?? 0);
  }
  const flowAt = place.flow * (size + 1);
  p[flowAt] = (p[flowAt] ?? 0) + ((after - before) * flowPerGravity.sd) ** 2;
  return { ...one, mean, covariance: p };
};

/** A change that moves one place of an account, with its uncertainty. */
export type Move = readonly [at: number, by: number, sd: number];

/** An account after some of its places moved, each by itself. */
export const withMoved = (one: Component, ...moves: readonly Move[]): Component => {
  const mean = one.mean.slice();
  const covariance = one.covariance.slice();
  for (const [at, by, sd] of moves) {
    mean[at] = (mean[at] ?? 0) + by;
    const own = at * (mean.length + 1);
    covariance[own] = (covariance[own] ?? 0) + sd * sd;
  }
  return { ...one, mean, covariance };
};
