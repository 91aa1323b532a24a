import { type Component, made, normalized, ownPlaces, place, together } from './mixture.ts';
import { leastWeight, mostComponents } from './priors.ts';
import { nothingHolds, type Windows } from './startBelief.ts';

/** Next to nothing, so that the logarithm of a spread is a number. */
const tiny = 1e-30;

/**
 * What decides which two are merged, side by side in one array for speed: weight, the means of gravity, volume and flow,
 * the six numbers of how they vary together, and the logarithm of their determinant.
 */
const width = 11;

/** Working memory for so many components, made once. Everything in it is written before it is read. */
const roomFor = (count: number) => ({
  count,
  blocks: new Float64Array(count * width),
  /** What merging two would lose, in the row of the earlier and the column of the later. */
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

/** The row and the column of each of those six numbers. */
const rows = [0, 0, 0, 1, 1, 2];
const columns = [0, 1, 2, 1, 2, 2];

const writeLog = (blocks: Float64Array, at: number): void => {
  const number = (i: number) => read(blocks, at + 4 + i);
  blocks[at + 10] = logOf(number(0), number(1), number(2), number(3), number(4), number(5));
};

const writeBlock = (blocks: Float64Array, at: number, { weight, mean, covariance }: Component): void => {
  blocks[at] = weight;
  for (let i = 0; i < ownPlaces; i++) blocks[at + 1 + i] = mean[i] ?? 0;
  for (let k = 0; k < rows.length; k++)
    blocks[at + 4 + k] = covariance[(rows[k] ?? 0) * mean.length + (columns[k] ?? 0)] ?? 0;
  writeLog(blocks, at);
};

/** Merges the second of two blocks into the first. */
const merge = (blocks: Float64Array, first: number, second: number): void => {
  const a = first * width;
  const b = second * width;
  const weight = read(blocks, a) + read(blocks, b);
  const p = read(blocks, a) / weight;
  const q = 1 - p;
  const apart = (i: number) => read(blocks, a + 1 + i) - read(blocks, b + 1 + i);
  for (let k = 0; k < rows.length; k++) {
    const square = p * q * apart(rows[k] ?? 0) * apart(columns[k] ?? 0);
    blocks[a + 4 + k] = p * read(blocks, a + 4 + k) + q * read(blocks, b + 4 + k) + square;
  }
  for (let i = 0; i < ownPlaces; i++) blocks[a + 1 + i] = read(blocks, b + 1 + i) + p * apart(i);
  blocks[a] = weight;
  writeLog(blocks, a);
};

/**
 * Works out how much it would lose to merge one with each from a place in the list on. Nearly all of a fold's arithmetic is
 * here: the one's numbers are read once for all the others.
 * @source Runnalls 2007, IEEE Trans. Aerosp. Electron. Syst. 43, 989, eq. 21 (from memory)
 */
const weighLosses = (
  { count, blocks, losses }: Room,
  one: number,
  left: readonly number[],
  from: number,
): void => {
  const a = one * width;
  const wa = read(blocks, a);
  const ga = read(blocks, a + 1);
  const va = read(blocks, a + 2);
  const za = read(blocks, a + 3);
  const gga = read(blocks, a + 4);
  const gva = read(blocks, a + 5);
  const gza = read(blocks, a + 6);
  const vva = read(blocks, a + 7);
  const vza = read(blocks, a + 8);
  const zza = read(blocks, a + 9);
  const logA = read(blocks, a + 10);
  for (let k = from; k < left.length; k++) {
    const other = left[k] ?? 0;
    const b = other * width;
    const wb = read(blocks, b);
    const weight = wa + wb;
    const p = wa / weight;
    const q = 1 - p;
    const pq = p * q;
    const g = ga - read(blocks, b + 1);
    const v = va - read(blocks, b + 2);
    const z = za - read(blocks, b + 3);
    const gg = p * gga + q * read(blocks, b + 4) + pq * g * g;
    const gv = p * gva + q * read(blocks, b + 5) + pq * g * v;
    const gz = p * gza + q * read(blocks, b + 6) + pq * g * z;
    const vv = p * vva + q * read(blocks, b + 7) + pq * v * v;
    const vz = p * vza + q * read(blocks, b + 8) + pq * v * z;
    const zz = p * zza + q * read(blocks, b + 9) + pq * z * z;
    losses[Math.min(one, other) * count + Math.max(one, other)] =
      (weight * logOf(gg, gv, gz, vv, vz, zz) - wa * logA - wb * read(blocks, b + 10)) / 2;
  }
};

/** The cheapest partner of one among those after it, the earlier of two that lose alike. */
const seek = ({ count, losses, least, partner }: Room, i: number, left: readonly number[]): void => {
  let best = Infinity;
  let at = -1;
  for (let k = left.length - 1; k >= 0; k--) {
    const j = left[k] ?? 0;
    if (j <= i) break;
    const loss = read(losses, i * count + j);
    if (loss <= best) {
      best = loss;
      at = j;
    }
  }
  least[i] = best;
  partner[i] = at;
};

/** Components in groups of those that are taken for one, by the least loss at each step, the earlier of two that lose alike. */
const grouped = (components: readonly Component[]): Component[][] => {
  if (kept.count < components.length) kept = roomFor(2 * components.length);
  const room = kept;
  const { count, blocks, losses, least, partner } = room;
  const groups: Component[][] = [];
  const left: number[] = [];
  for (const one of components) {
    writeBlock(blocks, left.length * width, one);
    left.push(left.length);
    groups.push([one]);
  }
  for (const i of left) {
    weighLosses(room, i, left, i + 1);
    seek(room, i, left);
  }
  while (left.length > mostComponents) {
    let first = left[0] ?? 0;
    for (const i of left) if (read(least, i) < read(least, first)) first = i;
    const second = partner[first] ?? -1;
    const [into, from] = [groups[first], groups[second]];
    if (!into || !from) throw new Error('no two components to merge');
    into.push(...from);
    merge(blocks, first, second);
    left.splice(left.indexOf(second), 1);
    weighLosses(room, first, left, 0);
    for (const i of left) {
      if (i === first || partner[i] === first || partner[i] === second) seek(room, i, left);
      else if (i < first && read(losses, i * count + first) < read(least, i)) {
        least[i] = read(losses, i * count + first);
        partner[i] = first;
      }
    }
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
  const sane = made(components, (one) =>
    canBe(one) ? one : { ...nothingHolds([one], windows), weight: one.weight },
  );
  const likely = sane.filter(({ weight }) => weight >= leastWeight);
  const few = likely.length > 0 ? likely : sane;
  if (few.length <= mostComponents) return normalized(few);
  const merged: Component[] = [];
  for (const group of grouped(few)) merged.push(group[0] && group.length === 1 ? group[0] : together(group));
  return normalized(merged);
};
