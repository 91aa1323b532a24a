import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { BucketSaid } from './plainBucket.ts';
import type { PlainQuantity } from './plainQuantities.ts';

/** Quantities, by the options that they are for, and those that are for none. */
export interface Shared {
  typed: Record<string, string>;
  loose: PlainQuantity[];
}

/** Gives each quantity to the first of these options that it may be and that is still free. */
export const share = (
  quantities: readonly PlainQuantity[],
  options: readonly (readonly [
    option: string,
    is: PlainQuantity['is'][number],
    fits?: (one: PlainQuantity) => boolean,
  ])[],
): Shared => {
  const typed: Record<string, string> = {};
  const loose: PlainQuantity[] = [];
  for (const quantity of quantities) {
    const to = options.find(
      ([option, is, fits]) =>
        typed[option] === undefined && quantity.is.includes(is) && (fits?.(quantity) ?? true),
    );
    if (to) typed[to[0]] = quantity.typed;
    else loose.push(quantity);
  }
  return { typed, loose };
};

const isSeconds = ({ typed }: PlainQuantity) =>
  !/\d ?(?:m(?:ins?|inutes?)?|h(?:rs?|ours?)?|d(?:ays?)?)$/i.test(typed);

/** A number without a unit, and what it is most likely. */
export interface Maybe {
  option: string;
  value: string;
  typed: string;
}

/** What a bare number most likely is, when that is still missing: seconds, or a full cup's weight. */
export const maybeOf = ({ typed, loose }: Shared, weighs: boolean): Maybe | undefined => {
  const bare = loose.filter(({ is }) => is.length === 0);
  const [one] = bare;
  if (!one || bare.length > 1 || loose.length > 1) return undefined;
  const { number } = one;
  if (typed['seconds'] === undefined && number >= 3 && number <= 90)
    return { option: 'seconds', value: one.typed, typed: one.typed };
  const wantsWeight = weighs && typed['weight'] === undefined && typed['gravity'] === undefined;
  return wantsWeight && number > 90 && number < 2000
    ? { option: 'weight', value: `${one.typed}g`, typed: one.typed }
    : undefined;
};

/** A whole number that is left over, when no bucket was named: its number. */
export const numberOfBucket = (
  quantities: readonly PlainQuantity[],
  buckets: readonly BucketState[],
): { bucket: BucketSaid; at: PlainQuantity } | undefined => {
  const [one, ...others] = quantities.filter(({ is }) => is.length === 0);
  if (!one || others.length > 0 || !Number.isInteger(one.number)) return undefined;
  const isSafe = quantities.length === 1 || quantities.some(({ is }) => is.includes('duration'));
  const found = buckets.filter(({ no }) => no === one.number);
  return isSafe && found.length > 0
    ? { bucket: { buckets: found, typed: one.typed, guessed: true }, at: one }
    : undefined;
};

/** What the numbers of a reading may be. */
export const measured: Parameters<typeof share>[1] = [
  ['gravity', 'gravity'],
  ['seconds', 'duration', isSeconds],
  ['weight', 'mass'],
  ['temperature', 'temperature'],
  ['gap', 'length', ({ is }) => !is.includes('duration')],
];
