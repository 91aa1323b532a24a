import type { Hands } from '../people/hands.ts';

/** Grains as keepers reckon with them (common practice). */
const usualGrains = 2.6;

/** Water or powder, as much as brings a pail of this gravity to the middle of its window. */
export const toMiddle = (hands: Hands, gravity: number): void => {
  const { low, high } = hands.pail.kind.gravityWindow;
  const middle = (low + high) / 2;
  const ml = hands.volumeByEye();
  if (gravity > middle) hands.water((ml * (gravity - middle)) / (middle - 1));
  else hands.powder((ml * usualGrains * (middle - gravity)) / (usualGrains - middle));
};
