import { type Component, normalized, place, together } from './mixture.ts';
import { leastWeight, mostComponents } from './priors.ts';
import { nothingHolds, type Windows } from './startBelief.ts';

/** Next to nothing, so that the logarithm of a spread is a number. */
const tiny = 1e-30;

/** ln of the determinant over gravity, volume and flow, of a symmetric matrix given by its six numbers. */
const logDeterminant = (gg: number, gv: number, gz: number, vv: number, vz: number, zz: number): number =>
  Math.log(
    Math.max(tiny, gg * (vv * zz - vz * vz) - gv * (gv * zz - vz * gz) + gz * (gv * vz - vv * gz)),
  );

/** The parts of a component that decide what is merged with what, side by side for speed. */
interface Sized {
  one: Component;
  weight: number;
  g: number;
  v: number;
  z: number;
  spread: readonly [gg: number, gv: number, gz: number, vv: number, vz: number, zz: number];
  log: number;
}

const sized = (one: Component): Sized => {
  const size = one.mean.length;
  const at = (i: number, j: number) => one.covariance[i * size + j] ?? 0;
  const spread = [at(0, 0), at(0, 1), at(0, 2), at(1, 1), at(1, 2), at(2, 2)] as const;
  const [g = 0, v = 0, z = 0] = one.mean;
  return { one, weight: one.weight, g, v, z, spread, log: logDeterminant(...spread) };
};

/** How much is lost by taking two for one: Runnalls 2007, IEEE Trans. Aerosp. Electron. Syst. 43, 989, eq. 21 (from memory). */
const costOf = (a: Sized, b: Sized): number => {
  const weight = a.weight + b.weight;
  const [p, q] = [a.weight / weight, b.weight / weight];
  const [g, v, z] = [a.g - b.g, a.v - b.v, a.z - b.z];
  const pq = p * q;
  const [s, t] = [a.spread, b.spread];
  const log = logDeterminant(
    p * s[0] + q * t[0] + pq * g * g,
    p * s[1] + q * t[1] + pq * g * v,
    p * s[2] + q * t[2] + pq * g * z,
    p * s[3] + q * t[3] + pq * v * v,
    p * s[4] + q * t[4] + pq * v * z,
    p * s[5] + q * t[5] + pq * z * z,
  );
  return (weight * log - a.weight * a.log - b.weight * b.log) / 2;
};

/** What a pail can hold at all: an account beyond it, or unsure beyond all use, knows nothing. */
const canBe = ({ mean, covariance }: Component): boolean => {
  const size = mean.length;
  const [gravity = NaN, volume = NaN, flow = NaN] = mean;
  return (
    gravity > 0.9 &&
    gravity < 3 &&
    Math.abs(volume) < 8 &&
    Math.abs(flow) < 12 &&
    (covariance[0] ?? NaN) < 0.25 &&
    (covariance[place.volume * (size + 1)] ?? NaN) < 9 &&
    (covariance[place.flow * (size + 1)] ?? NaN) < 25
  );
};

/** Cheapest partner of each among those after it. */
interface Partner {
  at: number;
  cost: number;
}

const partnerOf = (list: readonly Sized[], i: number): Partner => {
  let best: Partner = { at: -1, cost: Infinity };
  const one = list[i];
  for (let j = i + 1; one && j < list.length; j++) {
    const other = list[j];
    if (!other) continue;
    const cost = costOf(one, other);
    if (cost < best.cost) best = { at: j, cost };
  }
  return best;
};

/** The few accounts that tell nearly as much as the many; the same for the same input, always. */
export const reduced = (components: readonly Component[], windows: Windows): Component[] => {
  const sane = components.map((one) =>
    canBe(one) ? one : { ...nothingHolds([one], windows), weight: one.weight },
  );
  const kept = sane.filter(({ weight }) => weight >= leastWeight);
  const list = (kept.length > 0 ? kept : sane).map(sized);
  const partners = list.length > mostComponents ? list.map((_, i) => partnerOf(list, i)) : [];
  while (list.length > mostComponents) {
    let first = 0;
    for (let i = 1; i < list.length; i++)
      if ((partners[i]?.cost ?? Infinity) < (partners[first]?.cost ?? Infinity)) first = i;
    const second = partners[first]?.at ?? -1;
    const [a, b] = [list[first], list[second]];
    if (!a || !b) throw new Error('two components to merge');
    list.splice(second, 1);
    partners.splice(second, 1);
    list[first] = sized(together([a.one, b.one]));
    for (let i = 0; i < list.length; i++) {
      const was = partners[i]?.at ?? -1;
      if (i === first || was === first || was === second) partners[i] = partnerOf(list, i);
      else {
        const known = { at: was > second ? was - 1 : was, cost: partners[i]?.cost ?? Infinity };
        const [one, merged] = [list[i], list[first]];
        const cost = i < first && one && merged ? costOf(one, merged) : Infinity;
        partners[i] = cost < known.cost ? { at: first, cost } : known;
      }
    }
  }
  return normalized(list.map(({ one }) => one));
};
