import { type Component, copied, place } from './mixture.ts';
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
 * Changes an account of a bucket by something that went in: gravity, volume and flow with it, and how they vary together.
 * It holds `held` litres.
 * @formula δ = a·e^−v, o = 1 + δ: G' = (G + γδ)/o, v' = v + ln o, z' = z + k(G' − G); P' = JPJᵀ + s²qqᵀ, D = (γ − G)/o²,
 *   J = (1/o, −Dδ, 0), (0, 1/o, 0), (k(1/o − 1), −kDδ, 1), q = (De^−v, e^−v/o, kDe^−v); P'zz gains (G' − G)²·sd(k)²
 * @source balance of mass and of volume; JCGM 100:2008, eq. 13, for the spread
 */
export const addTo = (
  { mean, covariance: p }: Component,
  { gravity, litres, sd }: Addition,
  held = Math.exp(mean[place.volume] ?? 0),
): void => {
  const size = mean.length;
  const before = mean[place.gravity] ?? 0;
  const delta = Math.max(mostOut, litres / held);
  // What is said to have come out beyond that is as unsure as the rest of it.
  const within = delta * held > litres ? (sd * delta * held) / litres : sd;
  const out = 1 + delta;
  const after = (before + gravity * delta) / out;
  const slope = (gravity - before) / (out * out);
  const k = flowPerGravity.value;
  mean[place.gravity] = after;
  mean[place.volume] = (mean[place.volume] ?? 0) + Math.log(out);
  mean[place.flow] = (mean[place.flow] ?? 0) + k * (after - before);

  const gg = 1 / out;
  const gv = -slope * delta;
  const zg = k * (gg - 1);
  const zv = k * gv;
  // Rows by J; the columns of instruments are done with that.
  for (let j = 0; j < size; j++) {
    const g = p[j] ?? 0;
    const v = p[size + j] ?? 0;
    const z = p[2 * size + j] ?? 0;
    p[j] = gg * g + gv * v;
    p[size + j] = gg * v;
    p[2 * size + j] = zg * g + zv * v + z;
  }
  // Columns by J.
  for (let i = 0; i < size; i++) {
    const row = i * size;
    const g = p[row] ?? 0;
    const v = p[row + 1] ?? 0;
    const z = p[row + 2] ?? 0;
    p[row] = gg * g + gv * v;
    p[row + 1] = gg * v;
    p[row + 2] = zg * g + zv * v + z;
  }
  // The amount's own spread. An addition does not change how far an instrument is off.
  const alongG = (within * slope) / held;
  const alongV = within / (held * out);
  const alongZ = k * alongG;
  const spread = (row: number, column: number, by: number) => {
    p[row * size + column] = (p[row * size + column] ?? 0) + by;
    if (row !== column) p[column * size + row] = (p[column * size + row] ?? 0) + by;
  };
  spread(0, 0, alongG * alongG);
  spread(0, 1, alongG * alongV);
  spread(0, 2, alongG * alongZ);
  spread(1, 1, alongV * alongV);
  spread(1, 2, alongV * alongZ);
  spread(2, 2, alongZ * alongZ + ((after - before) * flowPerGravity.sd) ** 2);
};

export const withAdded = (one: Component, addition: Addition): Component => {
  const next = copied(one);
  addTo(next, addition);
  return next;
};

/** Moves a place of an account by so much, give or take, by itself. */
export const move = ({ mean, covariance }: Component, at: number, by: number, sd: number): void => {
  mean[at] = (mean[at] ?? 0) + by;
  const own = at * (mean.length + 1);
  covariance[own] = (covariance[own] ?? 0) + sd * sd;
};

/**
 * An account that has forgotten one of its places: as unsure of it as at the start, and of how it goes with the rest.
 */
export const forgotten = (one: Component, at: number, value: number, sd: number): Component => {
  const next = copied(one);
  const size = next.mean.length;
  next.mean[at] = value;
  for (let i = 0; i < size; i++) {
    next.covariance[i * size + at] = 0;
    next.covariance[at * size + i] = 0;
  }
  next.covariance[at * (size + 1)] = sd * sd;
  return next;
};

/** An account after some of its places moved, each by itself. */
export const withMoved = (
  one: Component,
  ...moves: readonly (readonly [at: number, by: number, sd: number])[]
): Component => {
  const next = copied(one);
  for (const [at, by, sd] of moves) move(next, at, by, sd);
  return next;
};
