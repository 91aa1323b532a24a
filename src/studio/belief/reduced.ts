import { type Component, normalized, place, together } from './mixture.ts';
import { leastWeight, mostComponents } from './priors.ts';
import { nothingHolds, type Windows } from './startBelief.ts';

/** Next to nothing, so that the logarithm of a spread is a number. */
const tiny = 1e-30;

/**
 * What decides which two are merged, side by side in one array for speed: weight, the means of gravity, volume and flow,
 * the six numbers of how they vary together, and the logarithm of their determinant.
 */
const width = 11;
type Blocks = Float64Array;

const blocksOf = (components: readonly Component[]): Blocks => {
  const blocks = new Float64Array(components.length * width);
  components.forEach(({ weight, mean, covariance }, i) => {
    const size = mean.length;
    const [g = 0, v = 0, z = 0] = mean;
    const [gg = 0, gv = 0, gz = 0] = covariance;
    const [vv = 0, vz = 0, zz = 0] = [covariance[size + 1], covariance[size + 2], covariance[2 * size + 2]];
    blocks.set([weight, g, v, z, gg, gv, gz, vv, vz, zz], i * width);
    blocks[i * width + 10] = logOf(gg, gv, gz, vv, vz, zz);
  });
  return blocks;
};

/** ln of the determinant of a symmetric matrix, by its six numbers. */
const logOf = (gg: number, gv: number, gz: number, vv: number, vz: number, zz: number): number =>
  Math.log(Math.max(tiny, gg * (vv * zz - vz * vz) - gv * (gv * zz - vz * gz) + gz * (gv * vz - vv * gz)));

/**
 * Merges the second of two blocks into the first, or only reckons how much that would lose.
 * @source Runnalls 2007, IEEE Trans. Aerosp. Electron. Syst. 43, 989, eq. 21 (from memory)
 */
const merged = (blocks: Blocks, first: number, second: number, keep: boolean): number => {
  const [a, b] = [first * width, second * width];
  const at = (i: number) => blocks[i] ?? 0;
  const [wa, wb] = [at(a), at(b)];
  const weight = wa + wb;
  const p = wa / weight;
  const q = wb / weight;
  const pq = p * q;
  const g = at(a + 1) - at(b + 1);
  const v = at(a + 2) - at(b + 2);
  const z = at(a + 3) - at(b + 3);
  const gg = p * at(a + 4) + q * at(b + 4) + pq * g * g;
  const gv = p * at(a + 5) + q * at(b + 5) + pq * g * v;
  const gz = p * at(a + 6) + q * at(b + 6) + pq * g * z;
  const vv = p * at(a + 7) + q * at(b + 7) + pq * v * v;
  const vz = p * at(a + 8) + q * at(b + 8) + pq * v * z;
  const zz = p * at(a + 9) + q * at(b + 9) + pq * z * z;
  const log = logOf(gg, gv, gz, vv, vz, zz);
  const cost = (weight * log - wa * at(a + 10) - wb * at(b + 10)) / 2;
  if (keep) {
    const [mg, mv, mz] = [at(b + 1) + p * g, at(b + 2) + p * v, at(b + 3) + p * z];
    blocks.set([weight, mg, mv, mz, gg, gv, gz, vv, vz, zz, log], a);
  }
  return cost;
};

/** Components in groups of those that are taken for one, by the least loss at each step, the earlier of two that lose alike. */
const grouped = (components: readonly Component[]): Component[][] => {
  const blocks = blocksOf(components);
  const groups = components.map((one) => [one]);
  const count = components.length;
  const left = new Set(groups.keys());
  // What each pair would lose, the earlier first, and the cheapest partner of each among those after it.
  const losses = new Float64Array(count * count);
  const partner = new Int32Array(count);
  const least = new Float64Array(count);
  const seek = (i: number) => {
    let [best, at] = [Infinity, -1];
    for (let j = i + 1; j < count; j++) {
      const loss = losses[i * count + j] ?? Infinity;
      if (loss < best) [best, at] = [loss, j];
    }
    least[i] = best;
    partner[i] = at;
  };
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) losses[i * count + j] = merged(blocks, i, j, false);
    seek(i);
  }
  while (left.size > mostComponents) {
    let first = -1;
    for (const i of left) if (first < 0 || (least[i] ?? Infinity) < (least[first] ?? Infinity)) first = i;
    const second = partner[first] ?? -1;
    const [into, from] = [groups[first], groups[second]];
    if (!into || !from) throw new Error('no two components to merge');
    into.push(...from);
    merged(blocks, first, second, true);
    left.delete(second);
    for (let i = 0; i < second; i++) losses[i * count + second] = Infinity;
    for (const j of left)
      if (j !== first) {
        const [one, other] = [Math.min(j, first), Math.max(j, first)];
        losses[one * count + other] = merged(blocks, one, other, false);
      }
    for (const i of left) {
      const loss = i < first ? (losses[i * count + first] ?? Infinity) : Infinity;
      if (i === first || partner[i] === first || partner[i] === second) seek(i);
      else if (loss < (least[i] ?? Infinity)) [least[i], partner[i]] = [loss, first];
    }
  }
  return [...left].map((i) => groups[i] ?? []);
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

/** The few accounts that tell nearly as much as the many; the same for the same input, always. */
export const reduced = (components: readonly Component[], windows: Windows): Component[] => {
  const sane = components.map((one) =>
    canBe(one) ? one : { ...nothingHolds([one], windows), weight: one.weight },
  );
  const likely = sane.filter(({ weight }) => weight >= leastWeight);
  const kept = likely.length > 0 ? likely : sane;
  if (kept.length <= mostComponents) return normalized(kept);
  return normalized(
    grouped(kept).map((group) => (group[0] && group.length === 1 ? group[0] : together(group))),
  );
};
