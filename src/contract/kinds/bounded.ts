import type { ReadQuantity } from '../../parse/measure.ts';
import type { Asking, Kind, Read } from '../contract.ts';

/** A quantity that must lie within sensible limits. */
export const bounded = <T extends number>(
  example: string,
  control: 'text' | 'number',
  read: (typed: string, asking: Asking) => ReadQuantity<T> | Promise<ReadQuantity<T>>,
  { low, high, print }: { low: T; high: T; print(value: T, asking: Asking, typed: string): string },
): Kind<T> => ({
  control,
  example,
  async read(typed, asking): Promise<Read<T>> {
    const { option: w } = asking.words;
    const found = await read(typed, asking);
    if (!found.ok) return { ok: false, why: w.quantity(found.why, example) };
    if (found.value < low) return { ok: false, why: w.tooLow(typed, print(low, asking, typed)) };
    if (found.value > high) return { ok: false, why: w.tooHigh(typed, print(high, asking, typed)) };
    return found;
  },
});
