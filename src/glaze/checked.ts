/** Why a formula refused: the quantity, what it was, and the range in which the formula holds. */
export interface OutOfRange {
  quantity: string;
  value: number;
  low: number;
  high: number;
}

/**
 * A formula's answer: a value, or the typed reason for having none. A value out of range is never clamped, and no
 * answer is NaN.
 */
export type Checked<T> = { ok: true; value: T } | { ok: false; outOfRange: OutOfRange };

export const valid = <T>(value: T): Checked<T> => ({ ok: true, value });

export const refused = (quantity: string, value: number, low: number, high: number): Checked<never> => ({
  ok: false,
  outOfRange: { quantity, value, low, high },
});

/**
 * A value that is not a number within [low, high]; undefined when it is. For formulas that are worked out thousands of
 * times a second: `firstOutside` makes an array for each limit.
 */
export const outside = (
  quantity: string,
  value: number,
  low: number,
  high: number,
): Checked<never> | undefined =>
  value >= low && value <= high ? undefined : refused(quantity, value, low, high);

/** The first of the named values that is not a finite number within [low, high]; undefined when all are. */
export const firstOutside = (
  ...limits: (readonly [quantity: string, value: number, low: number, high: number])[]
): Checked<never> | undefined => {
  for (const [quantity, value, low, high] of limits) {
    const one = outside(quantity, value, low, high);
    if (one) return one;
  }
  return undefined;
};
