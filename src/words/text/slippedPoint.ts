import { gravityText } from './measures.ts';

/** The gravity that a number was likely meant for when its decimal point slipped: 1.44 for 144 and for 1440. */
export const slippedPoint = (value: number): string | undefined => {
  const meant = [value / 10, value / 100, value / 1000].find((one) => one >= 1.1 && one <= 2);
  return meant === undefined ? undefined : gravityText(meant);
};
