/** From the lowest to the highest of what may be. */
export type Span = readonly [low: number, high: number];

/** Chances that are the same whenever they are asked for by the same words. */
export interface Chance {
  /** At least 0, below 1. */
  next(): number;
  normal(sd: number): number;
  within(span: Span): number;
  happens(probability: number): boolean;
  pick<T>(from: readonly [T, ...T[]]): T;
}

/** FNV-1a, 32 bits. */
const hashed = (text: string): number => {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
};

/**
 * What the words name, such as the second weighing of a visit, has luck of its own: whoever decides otherwise
 * elsewhere in the room changes nothing about it.
 */
export const chance = (...words: readonly (string | number)[]): Chance => {
  let state = hashed(words.join('/'));
  // Mulberry32, public domain.
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    next,
    // Box and Muller 1958.
    normal: (sd) => sd * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    within: ([low, high]) => low + (high - low) * next(),
    happens: (probability) => next() < probability,
    pick: (from) => from[Math.floor(next() * from.length)] ?? from[0],
  };
};

/** When something happens that happens so often a day, by chance: days, in order, below `days`. */
export const moments = (luck: Chance, perDay: number, days: number): number[] => {
  const all: number[] = [];
  if (perDay <= 0) return all;
  for (let at = -Math.log(1 - luck.next()) / perDay; at < days; at -= Math.log(1 - luck.next()) / perDay)
    all.push(at);
  return all;
};
