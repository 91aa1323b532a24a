import type { QuantityProblem } from '../../parse/quantityProblem.ts';
import type { Asking, Kind, Read } from '../contract.ts';

type Found<T> = { ok: true; value: T } | { ok: false; why: QuantityProblem };

interface Bounds<T> {
  low: T;
  high: T;
  print(value: T, asking: Asking, typed: string): string;
}

/** A quantity that must lie within sensible limits. */
export const bounded = <T extends number>(
  example: string,
  control: 'text' | 'number',
  read: (typed: string, asking: Asking) => Found<T> | Promise<Found<T>>,
  bounds: Bounds<T>,
): Kind<T> => ({
  control,
  example,
  async read(typed, asking): Promise<Read<T>> {
    const { words } = asking;
    const found = await read(typed, asking);
    if (!found.ok) return { ok: false, why: words.option.quantity(found.why, example) };
    const { low, high, print } = bounds;
    if (found.value < low) return { ok: false, why: words.option.tooLow(typed, print(low, asking, typed)) };
    if (found.value > high)
      return { ok: false, why: words.option.tooHigh(typed, print(high, asking, typed)) };
    return { ok: true, value: found.value };
  },
});
