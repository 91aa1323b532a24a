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

/** Working memory, made once. Everything in it is written before it is read. */
const roomFor = (count: number) => ({
  count,
  blocks: new Float64Array(count * width),
  /** What merging two would lose, the earlier one's row. */
  losses: new Float64Array(count * count),
  /** The least that each would lose with one after it, and with which. */
  least: new Float64Array(count),
  partner: new Int32Array(count),
});
type Room = ReturnType<typeof roomFor>;
let kept = roomFor(64);

const read = (numbers: Float64Array, i: number): number => numbers[i] ?? 0;

/** ln of the determinant of a symmetric matrix, by its six numbers. */
const logOf = (gg: number, gv: number, gz: number, vv: number, vz: number, zz: number): number =>
  Math.log(Math.max(tiny, gg * (vv * zz - vz * vz) - gv * (gv * zz - vz * gz) + gz * (gv * vz - vv * gz)));

const writeBlock = (blocks: Float64Array, at: number, { weight, mean, covariance }: Component): void => {
  const size = mean.length;
  const [g = 0, v = 0, z = 0] = mean;
  const [gg = 0, gv = 0, gz = 0] = covariance;
  const [vv, vz, zz] = [covariance[size + 1] ?? 0, covariance[size + 2] ?? 0, covariance[2 * size + 2] ?? 0];
  blocks[at] = weight;
  blocks[at + 1] = g;
  blocks[at + 2] = v;
  blocks[at + 3] = z;
  blocks[at + 4] = gg;
  blocks[at + 5] = gv;
  blocks[at + 6] = gz;
  blocks[at + 7] = vv;
  blocks[at + 8] = vz;
  blocks[at + 9] = zz;
  blocks[at + 10] = logOf(gg, gv, gz, vv, vz, zz);
};

/**
 * Merges the second of two blocks into the first, or only works out how much that would lose.
 * @source Runnalls 2007, IEEE Trans. Aerosp. Electron. Syst. 43, 989, eq. 21 (from memory)
 */
const merged = (blocks: Float64Array, first: number, second: number, keep: boolean): number => {
  const a = first * width;
  const b = second * width;
  const wa = read(blocks, a);
  const wb = read(blocks, b);
  const weight = wa + wb;
  const p = wa / weight;
  const q = 1 - p;
  const pq = p * q;
  const g = read(blocks, a + 1) - read(blocks, b + 1);
  const v = read(blocks, a + 2) - read(blocks, b + 2);
  const z = read(blocks, a + 3) - read(blocks, b + 3);
  const gg = p * read(blocks, a + 4) + q * read(blocks, b + 4) + pq * g * g;
  const gv = p * read(blocks, a + 5) + q * read(blocks, b + 5) + pq * g * v;
  const gz = p * read(blocks, a + 6) + q * read(blocks, b + 6) + pq * g * z;
  const vv = p * read(blocks, a + 7) + q * read(blocks, b + 7) + pq * v * v;
  const vz = p * read(blocks, a + 8) + q * read(blocks, b + 8) + pq * v * z;
  const zz = p * read(blocks, a + 9) + q * read(blocks, b + 9) + pq * z * z;
  const log = logOf(gg, gv, gz, vv, vz, zz);
  const cost = (weight * log - wa * read(blocks, a + 10) - wb * read(blocks, b + 10)) / 2;
  if (keep) {
    blocks[a] = weight;
    blocks[a + 1] = read(blocks, b + 1) + p * g;
    blocks[a + 2] = read(blocks, b + 2) + p * v;
    blocks[a + 3] = read(blocks, b + 3) + p * z;
    blocks[a + 4] = gg;
    blocks[a + 5] = gv;
    blocks[a + 6] = gz;
    blocks[a + 7] = vv;
    blocks[a + 8] = vz;
    blocks[a + 9] = zz;
    blocks[a + 10] = log;
  }
  return cost;
};

/** The cheapest partner of one among those after it, the earlier of two that lose alike. */
const seek = ({ losses, least, partner }: Room, i: number, count: number): void => {
  let best = Infinity;
  let at = -1;
  for (let j = i + 1; j < count; j++) {
    const loss = read(losses, i * count + j);
    if (loss < best) {
      best = loss;
      at = j;
    }
  }
  least[i] = best;
  partner[i] = at;
};

/** Components in groups of those that are taken for one, by the least loss at each step, the earlier of two that lose alike. */
const grouped = (components: readonly Component[]): Component[][] => {
  const count = components.length;
  if (kept.count < count) kept = roomFor(2 * count);
  const room = kept;
  const { blocks, losses, least, partner } = room;
  const groups = components.map((one) => [one]);
  components.forEach((one, i) => writeBlock(blocks, i * width, one));
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) losses[i * count + j] = merged(blocks, i, j, false);
    seek(room, i, count);
  }
  const left = components.map((_, i) => i);
  while (left.length > mostComponents) {
    let first = left[0] ?? 0;
    for (const i of left) if (read(least, i) < read(least, first)) first = i;
    const second = partner[first] ?? -1;
    const [into, from] = [groups[first], groups[second]];
    if (!into || !from) throw new Error('no two components to merge');
    into.push(...from);
    merged(blocks, first, second, true);
    left.splice(left.indexOf(second), 1);
    for (const i of left) {
      if (i < second) losses[i * count + second] = Infinity;
      if (i === first) continue;
      const loss = merged(blocks, first, i, false);
      losses[Math.min(first, i) * count + Math.max(first, i)] = loss;
      if (partner[i] === first || partner[i] === second) seek(room, i, count);
      else if (i < first && loss < read(least, i)) {
        least[i] = loss;
        partner[i] = first;
      }
    }
    seek(room, first, count);
  }
  return left.map((i) => groups[i] ?? []);
};

/** What a pail can hold at all. An account beyond it, or too unsure to be of use, counts as knowing nothing. */
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

/** Merges many accounts into a few that say nearly the same. The same input always gives the same result. */
export const reduced = (components: readonly Component[], windows: Windows): Component[] => {
  const sane = components.map((one) =>
    canBe(one) ? one : { ...nothingHolds([one], windows), weight: one.weight },
  );
  const likely = sane.filter(({ weight }) => weight >= leastWeight);
  const few = likely.length > 0 ? likely : sane;
  if (few.length <= mostComponents) return normalized(few);
  return normalized(
    grouped(few).map((group) => (group[0] && group.length === 1 ? group[0] : together(group))),
  );
};
