import type { Chance } from '../physics/chance.ts';

/** A number as somebody writes it who swaps two digits; as it is when there are none to swap. */
export const swapped = (typed: string, luck: Chance): string => {
  const digits = [...typed];
  const places = digits.flatMap((char, i) => (char === '.' ? [] : [i]));
  const pairs = places.flatMap((place, n): [number, number][] => {
    const next = places[n + 1];
    if (next === undefined || digits[place] === digits[next]) return [];
    // Nobody begins a number with a nought.
    return n === 0 && digits[next] === '0' ? [] : [[place, next]];
  });
  const [first, ...others] = pairs;
  if (!first) return typed;
  const [a, b] = luck.pick([first, ...others]);
  const [left = '', right = ''] = [digits[a], digits[b]];
  digits[a] = right;
  digits[b] = left;
  return digits.join('');
};
