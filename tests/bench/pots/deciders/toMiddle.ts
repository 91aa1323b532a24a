import type { Hands } from '../people/hands.ts';

/** Grains as keepers reckon with them (common practice). */
const usualGrains = 2.6;

/** Water or powder, as much as brings a pail of this gravity to the middle of its window; room is made for it first. */
export const toMiddle = (hands: Hands, gravity: number): void => {
  const { low, high } = hands.pail.kind.gravityWindow;
  const middle = (low + high) / 2;
  const each =
    gravity > middle
      ? (gravity - middle) / (middle - 1)
      : (usualGrains * (middle - gravity)) / (usualGrains - middle);
  const fills = gravity > middle ? each : each / usualGrains;
  const over = fills * hands.pail.volume - hands.headroom;
  // What is taken out needs nothing.
  if (over > 0) hands.ladle(over / (1 + fills));
  const amount = each * hands.volumeByEye();
  if (gravity > middle) hands.water(amount);
  else hands.powder(amount);
};
