import { chance } from '../pots/physics/chance.ts';

/**
 * Draws from 1 to `most`: what is drawn second most often is drawn half as often as the first, the third a third as
 * often, and so on. Neighbours in the draw are no neighbours in the file. Each day of a name is the same, so that two
 * engines see the same one.
 */
export const skewed = (most: number, day: string): (() => number) => {
  const luck = chance(day);
  const sums: number[] = [];
  for (let rank = 1; rank <= most; rank += 1) sums.push((sums.at(-1) ?? 0) + 1 / rank);
  return () => {
    const drawn = luck.within([0, sums.at(-1) ?? 0]);
    let [low, high] = [0, most - 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((sums[middle] ?? 0) < drawn) low = middle + 1;
      else high = middle;
    }
    return 1 + ((low * 7_919) % most);
  };
};
